// Two cards against pictures of them that somebody looked at: at most one in a hundred points may
// differ. With --accept the pictures are replaced.
//
//     node check_pictures.mjs FOLDER [--accept]     NAME.png against golden/NAME.png
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { Checks } from './cards.mjs';

const [folder, option] = process.argv.slice(2);
const checks = new Checks();
for (const name of ['ferry-pier-tin-loaf', 'forecast']) {
  const made = readFileSync(`${folder}/${name}.png`);
  const kept = new URL(`golden/${name}.png`, import.meta.url);
  if (option === '--accept') writeFileSync(kept, made);
  const actual = PNG.sync.read(made);
  const expected = PNG.sync.read(readFileSync(kept));
  const isSameSize = actual.width === expected.width && actual.height === expected.height;
  checks.check(`${name}: size of the picture`, isSameSize);
  if (!isSameSize) continue;
  const differing = pixelmatch(actual.data, expected.data, null, actual.width, actual.height, { threshold: 0.2 });
  const share = differing / (actual.width * actual.height);
  checks.check(`${name}: looks as before`, share < 0.01, `${(100 * share).toFixed(2)} % of the points differ`);
}
checks.end();
