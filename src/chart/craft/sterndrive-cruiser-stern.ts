import { bothSides, disc } from './path.js';
import { sterndriveFromAstern } from './sterndrive.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 95;

/** A sterndrive cruiser, seen from astern. */
export const sterndriveCruiserStern: View = {
  name: 'stern',
  width: 190,
  height: 200,
  marks: [
    fitting('M 34 46 L 42 10 C 60 4 130 4 148 10 L 156 46 Z'),
    line('M 42 10 C 60 16 130 16 148 10 M 48 20 L 44 46 M 142 20 L 146 46 M 95 14 L 95 40', 'faint'),
    body(
      'M 6 46 C 40 40 150 40 184 46 C 182 70 176 92 168 110 L 158 117 L 95 142 L 32 117 L 22 110 C 14 92 8 70 6 46 Z',
    ),
    part(
      'transom',
      'M 18 54 C 60 49 130 49 172 54 C 170 74 165 92 158 108 L 95 133 L 32 108 C 25 92 20 74 18 54 Z',
      46,
      66,
    ),
    again('hull below waterline', 'M 32 117 L 95 142 L 158 117 L 158 112 L 95 137 L 32 112 Z'),
    again('seams and welds', bothSides('M 22 110 L 32 117 L 32 112 L 25 107 Z', middle)),
    again('swim platform', 'M 20 80 L 170 80 L 168 90 L 22 90 Z'),
    line('M 40 80 L 40 90 M 60 80 L 60 90 M 130 80 L 130 90 M 150 80 L 150 90', 'faint'),
    again('through-hull fittings', `${disc(44, 99, 3.5)} ${disc(146, 99, 3.5)} ${disc(134, 68, 3.5)}`),
    again(
      'trim tabs and rams',
      bothSides('M 36 120 L 70 133.5 L 70 139 L 36 125.5 Z M 50 98 L 55 98 L 57 129 L 53 128 Z', middle),
    ),
    again('transducer', 'M 140 126 L 154 120.5 L 154 126 L 142 131 Z'),
    again('speed indicator', 'M 131 129 L 135 127.5 L 135 140 L 131 140 Z'),
    ...sterndriveFromAstern,
  ],
};
