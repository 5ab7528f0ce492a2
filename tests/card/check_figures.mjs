// The same figures in all four forms, in the order of the work; lines of text within 80 columns.
//
//     node check_figures.mjs FOLDER      NAME.json, .txt, .html, and .pdf.txt from pdftotext -raw
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import stringWidth from 'string-width';
import { cardsOf, Checks, figuresOf, launch, openPage, textsOf } from './cards.mjs';

const folder = resolve(process.argv[2]);
const checks = new Checks();
const browser = await launch();
const rightToLeft = /[\u0590-\u08ff]/;

async function htmlTexts(file) {
  const { context, page } = await openPage(browser, file, {});
  const texts = await page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const found = [];
    while (walker.nextNode()) found.push(walker.currentNode.data);
    return found;
  });
  await context.close();
  return texts.join(' ');
}

// Every weight with its name, one behind the other, blanks aside: lines break anywhere.
function missingInOrder(text, cards) {
  const bare = (words) => words.replace(/\s+/g, '');
  const whole = bare(text);
  let at = 0;
  for (const column of cards.flatMap((card) => card.columns)) {
    for (const row of [...column.rows, column.total, ...column.below]) {
      const wanted = bare(row.weight) + (rightToLeft.test(row.name) ? '' : bare(row.name));
      const found = whole.indexOf(wanted, at);
      if (found < 0) return `${row.weight} ${row.name}`;
      at = found + wanted.length;
    }
  }
  return '';
}

for (const entry of readdirSync(folder).filter((each) => each.endsWith('.json')).sort()) {
  const name = entry.replace('.json', '');
  const cards = cardsOf(`${folder}/${entry}`);
  const text = readFileSync(`${folder}/${name}.txt`, 'utf8');
  const html = await htmlTexts(`${folder}/${name}.html`);
  const pdf = readFileSync(`${folder}/${name}.pdf.txt`, 'utf8');
  const wide = text.split('\n').filter((line) => stringWidth(line) > 80);
  checks.check(`${name}: text within 80 columns`, wide.length === 0, wide[0]);
  checks.check(`${name}: the PDF has every weight and name in order`, missingInOrder(pdf, cards) === '',
    missingInOrder(pdf, cards));
  checks.check(`${name}: the HTML has every weight and name in order`, missingInOrder(html, cards) === '',
    missingInOrder(html, cards));
  checks.check(`${name}: weights in grams are those that are shown`,
    cards.flatMap((card) => card.columns).flatMap((column) => column.rows)
      .every((row) => !row.weight.endsWith(' g') || Math.abs(parseFloat(row.weight) - row.weight_g) < 1e-6));
  if (cards.some((card) => card.curve.length > 0)) continue; // of a curve, each form has another choice of points
  const wanted = figuresOf(textsOf(cards).join(' '));
  checks.check(`${name}: there are figures`, wanted.length > 100);
  for (const [form, words] of [['text', text], ['HTML', html], ['PDF', pdf]]) {
    const found = figuresOf(words);
    checks.check(`${name}: the same figures in ${form} and JSON`, found === wanted, `${found}\n   not ${wanted}`);
  }
}
await browser.close();
checks.end();
