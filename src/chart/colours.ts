/** One colour of the page in both schemes, as `#rrggbb`. */
export interface Colour {
  readonly light: string;
  readonly dark: string;
}

const colour = (light: string, dark: string): Colour => ({ light, dark });

/**
 * Every colour a page or drawing may use, by the name of its CSS variable. `ramp-1` (least) to `ramp-6` (most) is one hue
 * from pale to deep, so that it also reads in grey and with any colour vision; `ramp-ink-N` is the text upon it.
 */
export const colours: Readonly<Record<string, Colour>> = {
  paper: colour('#fcfbf8', '#14191b'),
  ink: colour('#1b2327', '#e7eae9'),
  soft: colour('#4a565c', '#aab5b9'),
  rule: colour('#7b868b', '#738086'),
  hair: colour('#d8dbd8', '#30393d'),
  band: colour('#f2f1ec', '#1c2326'),
  accent: colour('#0b5a6c', '#79c7d6'),
  'accent-wash': colour('#d3e5e8', '#173d47'),
  second: colour('#8f4a0b', '#e3a66a'),
  third: colour('#5a4a86', '#b7a6e6'),
  alert: colour('#9a2b1d', '#f09a88'),
  'alert-wash': colour('#fbeeea', '#33201c'),
  'ramp-1': colour('#e3eff1', '#1c2b30'),
  'ramp-2': colour('#bddde2', '#1f4450'),
  'ramp-3': colour('#8cc3cd', '#266173'),
  'ramp-4': colour('#4c93a3', '#4d93a5'),
  'ramp-5': colour('#1f6779', '#8cc7d3'),
  'ramp-6': colour('#0b3a48', '#d5eef2'),
  'ramp-ink-1': colour('#1b2327', '#ffffff'),
  'ramp-ink-2': colour('#1b2327', '#ffffff'),
  'ramp-ink-3': colour('#1b2327', '#ffffff'),
  'ramp-ink-4': colour('#0c1214', '#0c1214'),
  'ramp-ink-5': colour('#ffffff', '#0c1214'),
  'ramp-ink-6': colour('#ffffff', '#0c1214'),
};

/** How many steps the ramp has. */
export const rampSteps = 6;

/** A colour as drawings and style sheets use it: `var(--accent)`. */
export function paint(name: string): string {
  if (!(name in colours)) throw new Error(`there is no colour "${name}"`);
  return `var(--${name})`;
}
