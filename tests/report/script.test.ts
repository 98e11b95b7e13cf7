import { expect, test } from 'vitest';
import { deskScript } from '../../src/report/desk/desk-script.js';
import { listScript } from '../../src/report/desk/list-script.js';
import { watchScript } from '../../src/report/desk/watch-script.js';
import { engineScript } from '../../src/report/engine-script.js';
import { pageScript } from '../../src/report/page-script.js';
import { bundleScript, scripts } from './bundle-script.js';

const carried: Readonly<Record<string, string>> = { pageScript, deskScript, listScript, watchScript, engineScript };

test.each(scripts)('$name is what its sources make', async ({ entry, name }) => {
  const isSame = carried[name] === (await bundleScript(entry));
  expect(isSame, 'its sources changed: run "npm run page-script"').toBe(true);
});

test('no script runs text as code, and none that stands in a page as it is ends its own element', () => {
  for (const [name, text] of Object.entries(carried)) expect(/\beval\(|\bFunction\(/.test(text), name).toBe(false);
  // What counts again stands in base64, and becomes an element's text only in the page.
  const { engineScript: _packed, ...plain } = carried;
  for (const [name, text] of Object.entries(plain)) expect(/<\/script|<!--/i.test(text), name).toBe(false);
});
