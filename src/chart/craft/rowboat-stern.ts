import { bothSides, box } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 95;

/** A rowboat seen from astern. */
export const rowboatStern: View = {
  name: 'stern',
  width: 190,
  height: 130,
  marks: [
    line(bothSides('M 24 18 L 23 8 M 32 18 L 33 8', middle), 'outline'),
    fitting(bothSides('M 18 21 L 20 16 L 36 16 L 38 21 Z', middle)),
    fitting(box(92, 114, 6, 12)),
    body(
      'M 18 20 C 60 26 130 26 172 20 C 168 46 150 84 128 104 C 118 112 108 116 95 116 C 82 116 72 112 62 104 C 40 84 22 46 18 20 Z',
    ),
    part('transom', 'M 29 28 C 66 32 124 32 161 28 C 156 46 149 63 139 78 L 51 78 C 41 63 34 46 29 28 Z', 54, 46),
    again(
      'hull below waterline',
      'M 50.9 92 C 54.4 96.4 58.1 100.5 62 104 C 72 112 82 116 95 116 C 108 116 118 112 128 104 C 131.9 100.5 135.6 96.4 139.1 92 Z',
    ),
    again('waterline', 'M 44.9 84 C 46.8 86.8 48.8 89.5 50.9 92 L 139.1 92 C 141.2 89.5 143.2 86.8 145.1 84 Z'),
    again('seams and welds', bothSides('M 18.5 23 C 22.5 40 31 62 41.5 79 L 47 79 C 37 63 29.5 45 25 26 Z', middle)),
    fitting('M 86 24.5 C 86 36 104 36 104 24.5 Z'),
    line('M 95 40 L 95 78', 'faint'),
  ],
};
