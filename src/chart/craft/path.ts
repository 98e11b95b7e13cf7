const pair = /(-?[\d.]+)[ ,]+(-?[\d.]+)/g;

function mapped(d: string, change: (x: number, y: number) => readonly [number, number]): string {
  return d.replace(pair, (_, x: string, y: string) => {
    const [left, top] = change(Number(x), Number(y));
    return `${shortened(left)} ${shortened(top)}`;
  });
}

function shortened(value: number): string {
  return String(Number(value.toFixed(2)));
}

/** A path as a page carries it: without spaces that it can be read without. */
export function written(d: string): string {
  return d.replace(/ ?([A-Z]) ?/g, '$1').replaceAll(' -', '-');
}

/** A path mirrored across the upright line at x. */
export function flipped(d: string, x: number): string {
  return mapped(d, (left, top) => [2 * x - left, top]);
}

/** A path mirrored across the level line at y. */
export function turnedOver(d: string, y: number): string {
  return mapped(d, (left, top) => [left, 2 * y - top]);
}

/** A path together with its mirror image across the upright line at x. */
export function bothSides(d: string, x: number): string {
  return `${d} ${flipped(d, x)}`;
}

/** A path together with its mirror image across the level line at y. */
export function aboveAndBelow(d: string, y: number): string {
  return `${d} ${turnedOver(d, y)}`;
}

/** A path scaled, then moved. */
export function placed(d: string, left: number, top: number, scale = 1): string {
  return mapped(d, (x, y) => [x * scale + left, y * scale + top]);
}

/** An ellipse about a middle. */
export function oval(x: number, y: number, across: number, down: number): string {
  const [a, b] = [across * 0.5523, down * 0.5523].map((value) => Number(value.toFixed(2)));
  const top = `C ${x - across} ${y - b!} ${x - a!} ${y - down} ${x} ${y - down}`;
  const right = `C ${x + a!} ${y - down} ${x + across} ${y - b!} ${x + across} ${y}`;
  const foot = `C ${x + across} ${y + b!} ${x + a!} ${y + down} ${x} ${y + down}`;
  const left = `C ${x - a!} ${y + down} ${x - across} ${y + b!} ${x - across} ${y}`;
  return mapped(`M ${x - across} ${y} ${top} ${right} ${foot} ${left} Z`, (one, other) => [one, other]);
}

/** A circle about a middle. */
export function disc(x: number, y: number, radius: number): string {
  return oval(x, y, radius, radius);
}

/** A box with rounded corners. */
export function box(x: number, y: number, width: number, height: number, round = 0): string {
  const [right, foot] = [x + width, y + height];
  if (round === 0) return `M ${x} ${y} L ${right} ${y} L ${right} ${foot} L ${x} ${foot} Z`;
  return [
    `M ${x + round} ${y} L ${right - round} ${y} Q ${right} ${y} ${right} ${y + round}`,
    `L ${right} ${foot - round} Q ${right} ${foot} ${right - round} ${foot}`,
    `L ${x + round} ${foot} Q ${x} ${foot} ${x} ${foot - round} L ${x} ${y + round} Q ${x} ${y} ${x + round} ${y} Z`,
  ].join(' ');
}

/** Every coordinate that a path names; the path lies within their bounds. */
export function pointsOf(d: string): readonly (readonly [x: number, y: number])[] {
  return [...d.matchAll(pair)].map(([, x, y]) => [Number(x), Number(y)]);
}
