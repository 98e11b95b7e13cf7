import { writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { bundleScript, scripts } from './bundle-script.js';

for (const { entry, file, name, of } of scripts) {
  const text = await bundleScript(entry);
  if (name !== 'engineScript' && /<\/script|<!--/i.test(text)) throw new Error('the script would end its own element');
  const quoted = `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'").replaceAll('\n', '\\n')}'`;
  writeFileSync(
    new URL(`../../${file}`, import.meta.url),
    `/** ${of}'s script, made from ${dirname(entry)} by tests/report/accept-script.ts; a test holds the two together. */
export const ${name} =
  ${quoted};
`,
  );
}
