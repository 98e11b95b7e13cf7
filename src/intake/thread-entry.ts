/** Where a thread begins: the built file of that name, or in a checkout its source, behind the loader that reads sources. */
export function threadEntry(built: URL): URL {
  if (!import.meta.url.endsWith('.ts')) return built;
  const loader = import.meta.resolve('tsx/esm/api');
  const source = new URL(built.href.replace(/\.js$/, '.ts'));
  const code = `import { register } from '${loader}'; register(); await import('${source}');`;
  return new URL(`data:text/javascript,${encodeURIComponent(code)}`);
}
