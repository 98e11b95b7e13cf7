import { expect, test } from 'vitest';
import { deskScript } from '../../src/report/desk/desk-script.js';
import { watchScript } from '../../src/report/desk/watch-script.js';
import { pageScript } from '../../src/report/page-script.js';
import { bundleScript, scripts } from './bundle-script.js';

const carried: Readonly<Record<string, string>> = { pageScript, deskScript, watchScript };

test.each(scripts)('$name is what its sources make', async ({ entry, name }) => {
  expect(carried[name]).toBe(await bundleScript(entry));
});

test('no script ends its own element or runs text as code', () => {
  for (const text of Object.values(carried)) expect(text).not.toMatch(/<\/script|<!--|\beval\(|\bFunction\(/i);
});
