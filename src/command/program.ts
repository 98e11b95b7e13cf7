import { Command, CommanderError } from 'commander';
import { exitCodes } from './exit-codes.js';
import { programVersion } from './program-version.js';

const about = `Season records of watercraft inspection programs: from exported tables to reports that can be defended.

  rampbook import CROSSWALK... --from EXPORTS --store STORE   read the exports, check every cell, keep what is sound
  rampbook report NOTEBOOK... --store STORE --to FOLDER       compute notebooks and write them as pages
  rampbook evaluate NOTEBOOK --store STORE --json             compute a notebook and print every figure and sheet
  rampbook trace NOTEBOOK FIGURE --store STORE                show what a figure stands on, down to file and line`;

const after = `
Exit codes: 0 fine; 1 problems in the crosswalks, exports, store or notebooks (each is named with its place and remedy);
2 the command was used wrongly. Rows that are set aside are an answer, not a failure: see set-aside.csv in the store.
Nothing is sent anywhere: rampbook reads and writes the folders you name, and nothing else.`;

/** Runs one command line (without the program's own name) and gives the exit code. */
export async function program(words: readonly string[]): Promise<number> {
  let exitCode: number = exitCodes.fine;
  const command = new Command('rampbook');
  command
    .description(about)
    .addHelpText('after', after)
    .version(programVersion(), '--version', 'print the version')
    .helpOption('--help', 'show this help')
    .helpCommand(false)
    .exitOverride()
    .configureOutput({ outputError: (text, write) => write(text.replace(/^error: /, 'rampbook: ')) });
  // Each command loads what it needs only when it is called, so that help appears at once.
  command
    .command('import')
    .summary('read exports through crosswalks into a store')
    .description(
      'Reads exported tables through crosswalks, checks every cell, and writes a store: the kept records as Arrow files, and\n' +
        'set-aside.csv with the place, reason and remedy of every row that could not be kept. Rows read are always rows kept\n' +
        'plus rows set aside. An existing store is replaced as a whole, or not at all.',
    )
    .argument('<crosswalk...>', 'crosswalk files (YAML), one for each export format')
    .requiredOption('--from <folder>', 'the folder of exports')
    .requiredOption('--store <folder>', 'the store to write')
    .option(
      '--key <file>',
      'a file of at least 16 bytes that keys the pseudonyms; without it a key is made and thrown away,\nso that craft can be followed within this import only',
    )
    .option('--json', 'print the account as JSON')
    .option('--quiet', 'show no progress')
    .addHelpText(
      'after',
      '\nExample:\n  rampbook import lakes.crosswalk.yaml roads.crosswalk.yaml --from exports --store store',
    )
    .action(async (crosswalks: string[], options) => {
      const { importCommand } = await import('./import.js');
      exitCode = await importCommand({ crosswalks, ...options });
    });
  command
    .command('report')
    .summary('write notebooks as pages')
    .description('Computes notebooks over a store and writes each as one self-contained HTML page, NAME.html.')
    .argument('<notebook...>', 'notebook files (CommonMark)')
    .requiredOption('--store <folder>', 'the store to ask')
    .requiredOption('--to <folder>', 'the folder for the pages')
    .option('--quiet', 'show no progress')
    .addHelpText('after', '\nExample:\n  rampbook report notebooks/season.md --store store --to reports')
    .action(async (notebooks: string[], options) => {
      const { reportCommand } = await import('./report.js');
      exitCode = await reportCommand({ notebooks, ...options });
    });
  command
    .command('evaluate')
    .summary('print every figure and sheet of a notebook')
    .description('Computes a notebook over a store and prints every figure and sheet.')
    .argument('<notebook>', 'a notebook file (CommonMark)')
    .requiredOption('--store <folder>', 'the store to ask')
    .option('--json', 'print JSON: an estimate as value, low, high, numerator, denominator, method and unit')
    .addHelpText('after', '\nExample:\n  rampbook evaluate notebooks/season.md --store store --json')
    .action(async (notebook: string, options) => {
      const { evaluateCommand } = await import('./evaluate.js');
      exitCode = await evaluateCommand({ notebook, ...options });
    });
  command
    .command('trace')
    .summary('show what a figure stands on')
    .description(
      'Shows a figure’s formula, what it is made from, and the records counted and left out, by file and line. A cell of a\nsheet is named SHEET.COLUMN with its row, such as by_station.interception[alder-landing].',
    )
    .argument('<notebook>', 'a notebook file (CommonMark)')
    .argument('<figure>', 'the name of a figure')
    .requiredOption('--store <folder>', 'the store to ask')
    .option('--json', 'print the account as JSON')
    .addHelpText('after', '\nExample:\n  rampbook trace notebooks/season.md intercepted --store store')
    .action(async (notebook: string, figure: string, options) => {
      const { traceCommand } = await import('./trace.js');
      exitCode = await traceCommand({ notebook, figure, ...options });
    });
  try {
    if (words.length === 0) {
      command.outputHelp({ error: true });
      return exitCodes.wrongUse;
    }
    await command.parseAsync([...words], { from: 'user' });
    return exitCode;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.fine : exitCodes.wrongUse;
    throw error;
  }
}
