import { disc, oval, placed } from './path.js';

/** An anchor with its shank along the x axis, flukes at the left; about 26 wide and 18 high. */
export function anchorShape(left: number, top: number): string {
  const shank = 'M 6 8 L 20 8 L 20 6 L 22 6 L 22 12 L 20 12 L 20 10 L 6 10';
  return placed(`${shank} C 6 13 8 16 13 17 C 5 18 0 14 0 9 C 0 4 5 0 13 1 C 8 2 6 5 6 8 Z`, left, top);
}

/** A coil of line: rings about one another, about 18 across, as a closed shape. */
export function coilShape(x: number, y: number): string {
  return oval(x, y, 9, 7);
}

/** The turns within a coil. */
export function coilTurns(x: number, y: number): string {
  return `${oval(x, y, 6, 4.4)} ${oval(x, y, 3, 2)}`;
}

/** A fender hung upright: a long ball with an eye, about 9 wide and 26 high. */
export function fenderShape(left: number, top: number): string {
  const ball = 'M 0 8 C 0 2 9 2 9 8 L 9 20 C 9 26 0 26 0 20 Z';
  return placed(ball, left, top);
}

/** The line and seams of a fender. */
export function fenderLine(left: number, top: number): string {
  return placed('M 4.5 -8 L 4.5 3.5 M 0 8.5 L 9 8.5 M 0 19.5 L 9 19.5', left, top);
}

/** A life jacket laid flat, about 22 wide and 18 high. */
export function jacketShape(left: number, top: number): string {
  const jacket = 'M 4 0 L 8 0 C 8 5 14 5 14 0 L 18 0 C 18 5 20 7 22 8 L 22 18 L 0 18 L 0 8 C 2 7 4 5 4 0 Z';
  return placed(jacket, left, top);
}

/** The straps of a life jacket. */
export function jacketStraps(left: number, top: number): string {
  return placed('M 11 4 L 11 18 M 0 11 L 22 11 M 0 15 L 22 15', left, top);
}

/** A bag of gear, about 24 wide and 16 high. */
export function bagShape(left: number, top: number): string {
  return placed('M 3 4 L 21 4 C 24 4 24 16 21 16 L 3 16 C 0 16 0 4 3 4 Z', left, top);
}

/** The handles of a bag. */
export function bagHandles(left: number, top: number): string {
  return placed('M 8 4 C 8 -1 16 -1 16 4 M 8 4 L 8 16 M 16 4 L 16 16', left, top);
}

/** Three blades about a hub, seen along the shaft. */
export function bladesShape(x: number, y: number, radius: number): string {
  const blade = (turn: number): string => {
    const at = (along: number, across: number): string => {
      const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
      return `${(x + radius * (along * cos - across * sin)).toFixed(2)} ${(y + radius * (along * sin + across * cos)).toFixed(2)}`;
    };
    return `M ${at(0.2, -0.14)} C ${at(0.45, -0.62)} ${at(1, -0.5)} ${at(1, 0.02)} C ${at(0.98, 0.42)} ${at(0.5, 0.4)} ${at(0.2, 0.14)} Z`;
  };
  const third = (2 * Math.PI) / 3;
  return [0, 1, 2].map((turn) => blade(turn * third - Math.PI / 2)).join(' ');
}

/** The ring of a hub. */
export function hubShape(x: number, y: number, radius: number): string {
  return disc(x, y, radius);
}
