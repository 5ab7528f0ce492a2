// What the other checks share: the browser, and the cards' texts in each form.
import { readFileSync } from 'node:fs';
import { chromium } from 'playwright-core';

export const widths = [360, 768, 1280];

/** The file in Debian's Chromium, and what was asked for beside it. */
export async function openPage(browser, file, settings) {
  const context = await browser.newContext(settings);
  const page = await context.newPage();
  const requests = []; // that left the page: not those that its policy stopped
  page.on('requestfinished', (request) => requests.push(request.url()));
  page.on('requestfailed', (request) => {
    if (request.failure().errorText !== 'csp') requests.push(request.url());
  });
  await page.goto('file://' + file);
  return { context, page, requests };
}

export function launch() {
  return chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
}

export function cardsOf(file) {
  return JSON.parse(readFileSync(file, 'utf8')).cards;
}

/** Every text of a card's JSON, in its order. */
export function textsOf(value) {
  if (typeof value === 'string') return [value];
  if (typeof value === 'object' && value !== null) return Object.values(value).flatMap(textsOf);
  return [];
}

/** All figures with their units, sorted: what has to be the same in every form. */
export function figuresOf(text) {
  const figures = text.replace(/\s+/g, ' ').match(/-?\d+(\.\d+)? (g|oz|%)(?![a-z])/g) ?? [];
  return figures.sort().join('; ');
}

/** Counts checks and prints those that fail. */
export class Checks {
  passed = 0;
  failed = 0;
  check(name, isRight, details = '') {
    if (isRight) {
      this.passed += 1;
    } else {
      this.failed += 1;
      console.log(`FAIL  ${name}${details ? '\n        ' + details : ''}`);
    }
  }
  end() {
    console.log(`${this.passed} passed, ${this.failed} failed`);
    process.exit(this.failed === 0 ? 0 : 1);
  }
}
