import { drive, watercraftType } from '../record/codes.js';
import { componentOf, mayCarry } from '../record/components.js';

const types = [null, ...watercraftType.codes.map(({ code }) => code)];
const drives = [null, ...drive.codes.map(({ code }) => code)];

/** For one component: whether the craft of each type and drive may carry it, at `type × (drives + 1) + drive`, 0 for unrecorded. */
export function carriersOf(name: string): Uint8Array {
  const component = componentOf(name);
  const may = new Uint8Array(types.length * drives.length).fill(1);
  if (component === null) return may;
  types.forEach((type, t) => {
    drives.forEach((hung, d) => {
      may[t * drives.length + d] = mayCarry(component, type, hung) ? 1 : 0;
    });
  });
  return may;
}

/** The place of a craft in `carriersOf`, from the stored codes of its type and drive. */
export function craftKind(typeCode: number, driveCode: number): number {
  return typeCode * drives.length + driveCode;
}
