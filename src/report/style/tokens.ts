import { type Colour, colours } from '../../chart/colours.js';

function declarations(scheme: keyof Colour): string {
  return Object.entries(colours)
    .map(([name, colour]) => `--${name}:${colour[scheme]}`)
    .join(';');
}

const forced = [
  ...['paper', 'band', 'accent-wash', 'alert-wash'].map((name) => `--${name}:Canvas`),
  ...['ink', 'soft', 'rule', 'second', 'third', 'alert'].map((name) => `--${name}:CanvasText`),
  '--hair:GrayText',
  '--accent:LinkText',
].join(';');

/** Every colour as a variable: light, dark where the reader prefers it, light on paper, and the reader's own where forced. */
export const tokenStyle = `
:root{color-scheme:light dark;${declarations('light')}}
@media (prefers-color-scheme:dark){:root{${declarations('dark')}}}
@media print{:root{color-scheme:light;${declarations('light')};--paper:#ffffff}}
@media (forced-colors:active){:root{${forced}}}
`;
