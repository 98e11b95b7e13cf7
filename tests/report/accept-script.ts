import { writeFileSync } from 'node:fs';
import { bundleScript } from './bundle-script.js';

const text = await bundleScript();
if (/<\/script|<!--/i.test(text)) throw new Error('the script would end its own element');
const quoted = `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'").replaceAll('\n', '\\n')}'`;
writeFileSync(
  new URL('../../src/report/page-script.ts', import.meta.url),
  `/** The page's script, made from src/report/live by tests/report/accept-script.ts; a test holds the two together. */
export const pageScript =
  ${quoted};
`,
);
