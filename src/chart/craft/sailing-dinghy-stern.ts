import { bothSides } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

const middle = 95;

/** A sailing dinghy without an engine, seen from astern. */
export const sailingDinghyStern: View = {
  name: 'stern',
  width: 190,
  height: 214,
  marks: [
    line('M 92 44 L 92 6 M 98 44 L 98 2 M 88 8 L 96 2 M 94 8 L 102 2', 'detail'),
    line('M 95 10 L 30 82 M 95 10 L 160 82', 'faint'),
    fitting('M 84 44 C 84 30 106 30 106 44 C 106 54 84 54 84 44 Z'),
    line('M 90 42 C 90 37 100 37 100 42 C 100 46 93 46 93 43', 'faint'),
    line('M 95 52 L 60 82 M 95 52 L 130 82', 'faint'),
    fitting('M 34 84 L 40 74 L 150 74 L 156 84 Z'),
    again('centreboard', 'M 91.5 150 L 98.5 150 L 97.5 208 L 92.5 208 Z'),
    body(
      'M 16 82 C 60 88 130 88 174 82 C 176 104 164 128 144 140 C 126 150 110 154 95 154 C 80 154 64 150 46 140 C 26 128 14 104 16 82 Z',
    ),
    part(
      'transom',
      'M 28 90 C 66 95 124 95 162 90 C 160 102 154 112 146 119 L 44 119 C 36 112 30 102 28 90 Z',
      50,
      102,
    ),
    again('seams and welds', bothSides('M 16 85 C 17 102 24 116 35 128 L 40.5 124 C 31 114 25 102 24 88 Z', middle)),
    again(
      'hull below waterline',
      'M 156.4 130 C 152.8 133.9 148.6 137.2 144 140 C 126 150 110 154 95 154 C 80 154 64 150 46 140 C 41.4 137.2 37.2 133.9 33.6 130 Z',
    ),
    again('waterline', 'M 162.9 122 C 161 124.8 158.8 127.5 156.4 130 L 33.6 130 C 31.2 127.5 29 124.8 27.1 122 Z'),
    fitting('M 88 92 L 102 92 L 102 98 L 88 98 Z M 88 110 L 102 110 L 102 116 L 88 116 Z'),
    again('rudder', 'M 90.5 80 L 99.5 80 L 99.5 190 C 97.5 196 92.5 196 90.5 190 Z'),
    line('M 90.5 100 L 99.5 100 M 90.5 130 L 99.5 130', 'faint'),
  ],
};
