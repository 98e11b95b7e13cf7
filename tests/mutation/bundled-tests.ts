import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { copy } from './changed-copy.js';

/**
 * A test file of the copy with all of ours that it imports, as one text that can be run again and again, each time with
 * modules that have kept nothing. Packages are asked for by `require`.
 */
export async function bundledTest(file: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [join(copy, file)],
    bundle: true,
    write: false,
    platform: 'node',
    target: 'node20',
    format: 'cjs',
    packages: 'external',
    supported: { 'dynamic-import': false },
    logLevel: 'error',
    plugins: [
      {
        name: 'files know where they are',
        setup: ({ onLoad }) =>
          onLoad({ filter: /\.ts$/ }, ({ path }) => {
            const place = JSON.stringify(pathToFileURL(path).href);
            return { contents: readFileSync(path, 'utf8').replaceAll('import.meta.url', place), loader: 'ts' };
          }),
      },
    ],
  });
  return outputFiles[0]!.text;
}
