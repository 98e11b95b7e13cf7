import type { WashStandard } from './wash-standard.js';

/** Adults on a hull by high-pressure spray, and engines by their exit temperature. */
export const westernHull: WashStandard = {
  name: 'western hull 2016',
  source:
    'Elwell and Phillips (eds) 2016, Uniform Minimum Protocols and Standards for Watercraft Inspection and Decontamination, third edition, table 3, as reproduced in a boat maker’s manual of 2021',
  tag: 'second-hand',
  contactTemperatureF: 140,
  contactSeconds: 10,
  flushMinutes: null,
  flushExitTemperatureF: 140,
};
