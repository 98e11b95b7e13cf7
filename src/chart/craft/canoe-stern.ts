import { bothSides } from './path.js';
import { again, body, line, part, type View } from './view.js';

const middle = 95;

/** A canoe seen from astern. */
export const canoeStern: View = {
  name: 'canoe, stern',
  width: 190,
  height: 104,
  marks: [
    body(
      'M 40 34 C 60 30 84 22 95 6 C 106 22 130 30 150 34 C 156 52 152 74 138 86 C 126 95 110 98 95 98 C 80 98 64 95 52 86 C 38 74 34 52 40 34 Z',
    ),
    again(
      'hull below waterline',
      'M 142.1 82 C 140.8 83.4 139.5 84.8 138 86 C 126 95 110 98 95 98 C 80 98 64 95 52 86 C 50.5 84.8 49.2 83.4 47.9 82 Z',
    ),
    again('waterline', 'M 146.8 75 C 145.5 77.6 143.9 79.9 142.1 82 L 47.9 82 C 46.1 79.9 44.5 77.6 43.2 75 Z'),
    part('seams and welds', 'M 95 8 L 98 13 L 98 98 L 92 98 L 92 13 Z', 95, 52),
    line(bothSides('M 40.5 39 C 61 35 83 27 92 15', middle)),
    line(bothSides('M 88 24 C 82 44 82 66 88 75', middle), 'faint'),
    line(bothSides('M 68 33 C 56 50 56 66 64 75', middle), 'faint'),
  ],
};
