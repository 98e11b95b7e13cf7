const special = /[.*+?^${}()|[\]\\]/gu;

/** A path pattern as an expression: `*` stands for anything within one name, `**` for any folders. */
export function pathPattern(pattern: string): RegExp {
  const source = pattern
    .split('/')
    .map((name) =>
      name === '**'
        ? '**'
        : name
            .split('*')
            .map((part) => part.replace(special, '\\$&'))
            .join('[^/]*'),
    )
    .join('/')
    .replaceAll('**/', '(?:[^/]+/)*')
    .replaceAll('**', '.*');
  return new RegExp(`^${source}$`, 'u');
}
