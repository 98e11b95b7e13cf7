import { bothSides, box, disc } from './path.js';
import { sterndriveFromAstern } from './sterndrive.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 95;

/** A houseboat with a sterndrive, seen from astern. */
export const houseboatStern: View = {
  name: 'stern',
  width: 190,
  height: 200,
  marks: [
    line('M 22 14 L 22 -6 L 168 -6 L 168 14 M 22 4 L 168 4 M 58 14 L 58 -6 M 95 14 L 95 -6 M 132 14 L 132 -6', 'faint'),
    body('M 24 78 L 24 20 L 166 20 L 166 78 Z'),
    fitting(box(80, 28, 30, 50, 2)),
    line(`${box(86, 33, 18, 20, 2)} M 104 60 L 104 65`, 'faint'),
    fitting(bothSides(box(36, 30, 34, 24, 3), middle)),
    line(bothSides('M 53 30 L 53 54', middle), 'faint'),
    fitting(box(8, 14, 174, 6, 2)),
    line(
      bothSides(
        'M 14 20 L 14 78 M 14 60 L 70 60 M 14 69 L 70 69 M 34 60 L 34 78 M 52 60 L 52 78 M 70 60 L 70 78',
        middle,
      ),
    ),
    body('M 8 78 L 182 78 L 180 122 C 180 134 174 140 164 140 L 26 140 C 16 140 10 134 10 122 Z'),
    part('transom', 'M 17 92 L 173 92 L 172 120 C 172 124 170 126 166 126 L 24 126 C 20 126 18 124 18 120 Z', 34, 108),
    again(
      'hull below waterline',
      'M 11.2 130 L 178.8 130 C 176.6 136.6 171.5 140 164 140 L 26 140 C 18.5 140 13.4 136.6 11.2 130 Z',
    ),
    again('swim platform', 'M 20 80 L 170 80 L 168 89 L 22 89 Z'),
    line(bothSides('M 40 80 L 40 89 M 60 80 L 60 89', middle), 'faint'),
    again('through-hull fittings', bothSides(disc(44, 114, 3.5), middle)),
    again('transducer', 'M 138 140 L 152 140 L 150 147 L 140 147 Z'),
    ...sterndriveFromAstern,
  ],
};
