/** At most `most` of some things, evenly spread, the first and the last among them. */
export function thinned<Thing>(things: readonly Thing[], most: number): readonly Thing[] {
  if (things.length <= most) return things;
  const stride = (things.length - 1) / (most - 1);
  return Array.from({ length: most }, (_, at) => things[Math.round(at * stride)]!);
}
