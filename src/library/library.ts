// The package's front door for scripts: `import { openSeason } from 'rampbook'`. What is not named here may change.
export type { ColumnTable } from 'arquero';
export type { Result } from '../formula/result.js';
export type {
  EvaluatedFigure,
  EvaluatedInput,
  EvaluatedSelection,
  EvaluatedSheet,
  SheetColumn,
  SheetRow,
} from '../notebook/evaluated.js';
export type { Place, Problem } from '../problem/problem.js';
export type { TableName } from '../record/field.js';
export type { FileSum, ImportSum } from '../record/file-sum.js';
export type { Estimate, Interval } from '../statistic/estimate.js';
export type { ComputedNotebook, NotebookText } from './computed-notebook.js';
export { openSeason, type Season, type SeasonProblems } from './open-season.js';
