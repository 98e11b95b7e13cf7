import { carriedMark } from './carried-mark.js';
import { outboardFromAstern } from './outboard.js';
import { bothSides, disc } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 95;

/** An inflatable boat with a stiff floor and an outboard, seen from astern. */
export const inflatableBoatStern: View = {
  name: 'stern',
  width: 190,
  height: 190,
  marks: [
    fitting('M 60 66 L 70 34 L 120 34 L 130 66 Z'),
    line('M 72 34 L 78 18 L 112 18 L 118 34', 'detail'),
    body('M 40 92 L 150 92 L 148 112 L 95 136 L 42 112 Z'),
    part('transom', 'M 44 64 L 146 64 L 146 108 L 95 126 L 44 108 Z', 58, 84),
    again('hull below waterline', 'M 42 112 L 95 136 L 148 112 L 148 107 L 95 130 L 42 107 Z'),
    body(bothSides(disc(31, 88, 25), middle)),
    again('seams and welds', bothSides('M 52 74 L 57 71 C 62 82 62 94 57 105 L 52 102 C 56 93 56 83 52 74 Z', middle)),
    line(bothSides(disc(31, 88, 19), middle), 'faint'),
    line(bothSides(disc(31, 88, 5), middle)),
    line(bothSides('M 16 68 C 8 78 8 98 16 108', middle), 'faint'),
    ...outboardFromAstern.map((mark) => carriedMark(mark, 'inflatable boat')),
  ],
};
