import { build, type Plugin } from 'esbuild';

/** Every script that a page carries: what it is made of, and the file and name under which it stands. */
export const scripts = [
  { entry: 'src/report/live/page.ts', file: 'src/report/page-script.ts', name: 'pageScript', of: 'The page' },
  { entry: 'src/report/desk/live/desk.ts', file: 'src/report/desk/desk-script.ts', name: 'deskScript', of: 'The desk' },
  { entry: 'src/report/desk/live/list.ts', file: 'src/report/desk/list-script.ts', name: 'listScript', of: 'The list' },
  {
    entry: 'src/report/desk/live/watch.ts',
    file: 'src/report/desk/watch-script.ts',
    name: 'watchScript',
    of: 'The watching page',
  },
  {
    entry: 'src/report/live/engine/engine.ts',
    file: 'src/report/engine-script.ts',
    name: 'engineScript',
    of: 'What counts a page again',
  },
] as const;

/** What a page has in place of what draws when a page is made. */
const inPage: Readonly<Record<string, string>> = {
  './workshop.js': 'src/report/live/engine/workshop.ts',
  '../vega-drawing.js': 'src/report/live/engine/vega-drawing.ts',
};

const drawsInPage: Plugin = {
  name: 'draws in the page',
  setup: (bundling) => {
    bundling.onResolve({ filter: /\/(workshop|vega-drawing)\.js$/ }, ({ path }) => {
      const target = inPage[path];
      return target === undefined ? null : { path: new URL(`../../${target}`, import.meta.url).pathname };
    });
  },
};

/** A page's script as esbuild makes it: one plain script without imports, for browsers of 2022 on. */
export async function bundleScript(entry: string = scripts[0].entry): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [new URL(`../../${entry}`, import.meta.url).pathname],
    bundle: true,
    plugins: [drawsInPage],
    // Lines stand at the same place on every screen, and where they stand when the page is made.
    define: { 'window.devicePixelRatio': '2' },
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
