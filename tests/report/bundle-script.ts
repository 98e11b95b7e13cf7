import { build } from 'esbuild';

/** The page's script as esbuild makes it of src/report/live: one plain script without imports, for browsers of 2022 on. */
export async function bundleScript(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [new URL('../../src/report/live/page.ts', import.meta.url).pathname],
    bundle: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    minify: true,
    charset: 'ascii',
    supported: { 'template-literal': false },
    legalComments: 'none',
  });
  return outputFiles[0]!.text.trim();
}
