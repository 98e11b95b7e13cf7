import type { WashStandard } from './wash-standard.js';

/** Zebra mussels killed by spray in a trial. */
export const zebraSpray: WashStandard = {
  name: 'zebra spray 2009',
  source: 'Morse 2009, Biofouling 25:605-610',
  tag: 'from memory',
  contactTemperatureF: 140,
  contactSeconds: 10,
  flushMinutes: null,
  flushExitTemperatureF: null,
};
