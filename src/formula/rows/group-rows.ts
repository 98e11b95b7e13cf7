export { groupRows, type RowGroup } from '../../finding/group-rows.js';
