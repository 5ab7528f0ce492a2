// The HTML cards in a browser: accessible at every width, light and dark; nothing sticks out, runs or
// is fetched; a shipped formula prints on one page.
//
//     node check_pages.mjs FOLDER      the NAME.html of every card, NAME.json beside it
import { readFileSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { createRequire } from 'node:module';
import { Checks, launch, openPage, widths } from './cards.mjs';

const folder = resolve(process.argv[2]);
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const checks = new Checks();
const browser = await launch();

async function checkLooks(file, name) {
  for (const colorScheme of ['light', 'dark']) {
    for (const width of widths) {
      const where = `${name} at ${width} px, ${colorScheme}`;
      // axe is a script of the test's own: the policy of the file would rightly refuse it.
      const { context, page } = await openPage(browser, file, {
        viewport: { width, height: 900 }, colorScheme, bypassCSP: true });
      await page.evaluate(axe);
      const found = await page.evaluate(() => axe.run());
      checks.check(`${where}: axe finds nothing`, found.violations.length === 0,
        found.violations.map((violation) => `${violation.id}: ${violation.nodes[0].html}`).join('; '));
      const overhang = await page.evaluate(() =>
        document.documentElement.scrollWidth - document.documentElement.clientWidth);
      checks.check(`${where}: nothing sticks out`, overhang <= 0, `${overhang} px`);
      await context.close();
    }
  }
}

async function checkSafety(file, name) {
  const { context, page, requests } = await openPage(browser, file, {});
  let dialogs = 0;
  page.on('dialog', (dialog) => { dialogs += 1; dialog.dismiss(); });
  const elements = await page.evaluate(() =>
    document.querySelectorAll('script, iframe, object, link, img, form, [onload], [onerror], [href], [src]').length);
  checks.check(`${name}: nothing in it could run or fetch`, elements === 0, `${elements} elements`);
  // Even if something got in: a script and an image put there are refused.
  const ran = await page.evaluate(async () => {
    const image = document.createElement('img');
    image.src = 'http://127.0.0.1:9/x.png';
    document.body.append(image);
    const script = document.createElement('script');
    script.textContent = 'window.ran = true; alert(1)';
    document.body.append(script);
    const attempt = await fetch('http://127.0.0.1:9/').then(() => 'fetched', () => 'refused');
    await new Promise((done) => setTimeout(done, 100));
    return [window.ran === true, attempt];
  });
  const outside = requests.filter((url) => !url.startsWith('file://'));
  checks.check(`${name}: the policy of the file refuses scripts and the network`,
    !ran[0] && ran[1] === 'refused' && dialogs === 0 && outside.length === 0, `${ran}; ${outside}`);
  await context.close();
}

async function checkPrint(file, name) {
  const { context, page } = await openPage(browser, file, {});
  for (const format of ['A4', 'Letter']) {
    const pdf = (await page.pdf({ format, margin: { top: '10mm', bottom: '10mm', left: '10mm', right: '10mm' } }))
      .toString('latin1');
    const pages = pdf.match(/\/Type\s*\/Page\b/g).length;
    checks.check(`${name}: printed on ${format} it is one page`, pages === 1, `${pages} pages`);
  }
  await context.close();
}

for (const entry of readdirSync(folder).filter((each) => each.endsWith('.html')).sort()) {
  const file = `${folder}/${entry}`;
  const name = entry.replace('.html', '');
  await checkSafety(file, name);
  if (['ferry-pier-tin-loaf', 'forecast', 'hostile', 'scripts', 'long'].includes(name)) await checkLooks(file, name);
  if (!['beside', 'hostile', 'long', 'batch'].includes(name)) await checkPrint(file, name);
}
await browser.close();
checks.end();
