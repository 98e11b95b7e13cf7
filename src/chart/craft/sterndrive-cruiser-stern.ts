import { bladesShape, hubShape } from './equipment.js';
import { bothSides, disc } from './path.js';
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
    again('gimbal area', 'M 70 94 L 120 94 L 124 126 L 112 134 L 78 134 L 66 126 Z'),
    fitting('M 80 90 L 110 90 L 113 104 L 108 146 L 82 146 L 77 104 Z'),
    again('hydraulic rams', bothSides('M 70 112 L 77 112 L 82 140 L 76 141 Z', middle)),
    again('zincs', disc(95, 118, 6)),
    line('M 91.5 114.5 L 98.5 121.5 M 98.5 114.5 L 91.5 121.5', 'faint'),
    again(
      'outdrive lower unit',
      'M 88 151 L 102 151 L 105 157 L 105 175 L 98 179 L 96.5 196 L 93.5 196 L 92 179 L 85 175 L 85 157 Z',
    ),
    again('cavitation plate', 'M 62 146 L 128 146 L 126 151 L 64 151 Z'),
    again('propeller', bladesShape(middle, 167, 25)),
    again('exhaust hub', hubShape(middle, 167, 7)),
  ],
};
