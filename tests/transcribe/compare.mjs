// Amounts of ingredient lines against numeric-quantity, a general reader of numbers and fractions. The lines are
// "AMOUNT cup bread flour" for the amounts below, and those of tests/published/ingredient_lines.txt that begin with one
// plain amount. Where the two differ on purpose, the judgement is written here.
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { numericQuantity } from "numeric-quantity";

const command = process.argv[2];
const vulgar = [..."¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"];
const amounts = [
  "1", "2", "10", "250", "0.5", ".5", "1.25", "2.75", "1/2", "3/4", "2/3", "7/8", "1 1/2", "2 3/4", "10 2/3",
  "1\u20442", "1 1\u20442", "1,000", "2,500.5",
  ...vulgar, ...vulgar.map((one) => `1${one}`), ...vulgar.map((one) => `3 ${one}`),
];
for (let whole = 1; whole <= 9; whole += 1) {
  for (const below of [2, 3, 4, 6, 8]) {
    amounts.push(`${whole} 1/${below}`, `${whole}.${below}`, `1/${below + whole}`);
  }
}
// What is read otherwise, and why.
const judged = [
  [/^\d+-\d+\/\d+ /, "a hyphen joins a number and its fraction: 1-1/2 is one and a half; theirs stops at the hyphen"],
  [/^1 &frac12; cups milk$/, "the fraction is an entity of HTML; theirs reads plain characters only"],
  [/^4 cups flour, maybe 1\/2 cup more$/, "an amount that may be added makes a range, and ours is its middle; theirs reads the first number"],
];

const corpus = readFileSync(new URL("../published/ingredient_lines.txt", import.meta.url), "utf8")
  .split("\n")
  .filter((row) => /^[0-9¼½¾.]/.test(row))
  .map((row) => row.split("|")[0].trim())
  .filter((text) => !/[(/+]|plus|scant|heaping|rounded| or | to |[0-9]-[0-9]|^1\.|,[0-9]|lb 2|12-ounce|  dozen/.test(text.replace(/[0-9]+\/[0-9]+/g, "")));

const lines = [...amounts.map((amount) => `${amount} cup bread flour`), ...corpus];
const report = JSON.parse(
  execFileSync(command, ["transcribe", "-", "--format", "json", "--diagnostics", "json"], {
    input: lines.join("\n") + "\n",
    stdio: ["pipe", "pipe", "ignore"],
  }),
);
let passed = 0;
let failed = 0;
lines.forEach((text) => {
  const number = text.match(/^[0-9.,/\u2044 ¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]+/)[0].trim();
  const theirs = numericQuantity(number, { allowTrailingInvalid: true, round: false });
  const ours = report.lines.find((line) => line.text === text)?.amount;
  const judgement = judged.find(([pattern]) => pattern.test(text));
  if (judgement) {
    console.log(`judged ${text}: ours ${ours}, theirs ${theirs}; ${judgement[1]}`);
  } else if (Math.abs(ours - theirs) <= 1e-9 * theirs) {
    passed += 1;
  } else {
    failed += 1;
    console.log(`FAIL ${text}: ours ${ours}, theirs ${theirs}`);
  }
});
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed > 0 ? 1 : 0);
