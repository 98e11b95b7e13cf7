import { Command, CommanderError, Option } from 'commander';
import { exitCodes } from './exit-codes.js';
import { addSeason, importHelp } from './import-help.js';
import { about, after } from './program-help.js';
import { programVersion } from './program-version.js';
import { addWord } from './read-choice.js';

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
      'Reads exported tables through crosswalks, checks every cell, and writes a store: the kept records as Arrow files, and ' +
        'set-aside.csv with the place, reason and remedy of every row that could not be kept. Rows read are always rows kept ' +
        'plus rows set aside plus rows left out by rule. An existing store is replaced as a whole, or not at all. Files that ' +
        'stayed the same since the last import are taken from the store and not read again; when nothing is new, the store ' +
        'stays as it is.',
    )
    .argument('<crosswalk...>', 'crosswalk files (YAML), one for each export format')
    .requiredOption('--from <folder>', 'the folder of exports')
    .requiredOption('--store <folder>', 'the store to write')
    .option(
      '--key <file>',
      'a file of at least 16 bytes that keys the pseudonyms; without it a key is made and thrown away, so that craft can be followed within this import only; with - it is typed, and not shown',
    )
    .option(
      '--mended <file>',
      'rows that were set aside, corrected (may be given several times)',
      (file: string, others: string[] = []) => [...others, file],
    )
    .option('--withdraw <season>', 'a year whose files are left out until it is called back', addSeason)
    .option('--call-back <season>', 'a year withdrawn before, to be read again', addSeason)
    .option('--json', 'print the account as JSON')
    .option('--quiet', 'show no progress')
    .addHelpText('after', importHelp)
    .action(async (crosswalks: string[], options) => {
      const { importCommand } = await import('./import.js');
      exitCode = await importCommand({ crosswalks, ...options });
    });
  command
    .command('draft')
    .summary('draft a crosswalk from exported files')
    .description(
      'Looks at the headings and at a bounded part of the rows of exported files, and drafts a crosswalk for a person to review: ' +
        'for each column its field, how dates are written, what codes stand for, its unit, and what is private, with how sure ' +
        'that is and why. What a person must decide stands under "open", and the crosswalk refuses to import until it is ' +
        'answered. A file that is there already is never overwritten.',
    )
    .argument('<file...>', 'exported files; a folder, archive or workbook stands for all the files in it')
    .requiredOption('--to <file>', 'the crosswalk to write, such as lakes.crosswalk.yaml')
    .option(
      '--from <folder>',
      'the folder of exports that paths in the crosswalk start from; else the folder named, or the one all files share',
    )
    .addHelpText('after', '\nExample:\n  rampbook draft exports/lakes/*.csv --from exports --to lakes.crosswalk.yaml')
    .action(async (files: string[], options) => {
      const { draftCommand } = await import('./draft.js');
      exitCode = await draftCommand({ files, ...options });
    });
  command
    .command('rules')
    .summary('say what every kind of problem means')
    .description(
      'Prints every kind of problem that an import can find, or those named: what it means, what follows, and the remedy. ' +
        'What follows from some rules can be set otherwise in a crosswalk, with a reason that every report then shows:\n\n' +
        '  rules: { one-side-only: { severity: sets aside, because: the form asks for both sides } }',
    )
    .argument('[code...]', 'codes as set-aside.csv and notes.csv name them')
    .option('--json', 'print the table as JSON')
    .addHelpText('after', '\nExample:\n  rampbook rules over-long one-side-only')
    .action(async (codes: string[], options) => {
      const { rulesCommand } = await import('./rules.js');
      exitCode = rulesCommand({ codes, ...options });
    });
  command
    .command('conversions')
    .summary('say what cells become under which settings')
    .description(
      'Prints by example what a cell becomes under which settings of a crosswalk: numbers, units, dates, clocks, codes, texts ' +
        'that hold a value, and what is missing. The table is computed by the reader that an import uses. A row whose cell ' +
        'becomes the code of a problem is set aside.',
    )
    .option('--json', 'print the table as JSON')
    .addHelpText('after', '\nExample:\n  rampbook conversions > conversions.md')
    .action(async (options) => {
      const { conversionsCommand } = await import('./conversions.js');
      exitCode = conversionsCommand(options);
    });
  command
    .command('report')
    .summary('write notebooks as pages')
    .description(
      'Computes notebooks over a store and writes each as one self-contained HTML page, NAME.html; index.html lists all pages ' +
        'of the folder. Where a page of an earlier run is replaced, what changed is printed. With --pdf each is also written as ' +
        'a tagged PDF, NAME.pdf, printed by a Chromium found on this machine (RAMPBOOK_CHROMIUM names another). The PDF is dated ' +
        'by SOURCE_DATE_EPOCH, or else by the moment up to which the records tell; the same page and browser give the same bytes.',
    )
    .argument('<notebook...>', 'notebook files (CommonMark)')
    .requiredOption('--store <folder>', 'the store to ask')
    .requiredOption('--to <folder>', 'the folder for the pages')
    .option('--only <field=value>', 'count only records with that value (may be given several times)', addWord)
    .option('--with <input=value>', 'with another value for an input (may be given several times)', addWord)
    .option('--compare-with <folder>', 'tell on changes.html what changed since the pages in that folder, and why')
    .option('--pdf', 'print each page into a PDF beside it too')
    .addOption(new Option('--paper <size>', 'the paper of the PDF').choices(['letter', 'a4']).default('letter'))
    .option('--accounts', 'print how every number was made into the PDF too')
    .option('--quiet', 'show no progress')
    .addHelpText('after', '\nExample:\n  rampbook report notebooks/season.md --store store --to reports --pdf')
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
    .option('--only <field=value>', 'count only records with that value (may be given several times)', addWord)
    .option('--with <input=value>', 'with another value for an input (may be given several times)', addWord)
    .option('--json', 'print JSON: an estimate as value, low, high, numerator, denominator, method and unit')
    .addHelpText(
      'after',
      '\nExample:\n  rampbook evaluate notebooks/season.md --store store --only station=heron-point --with this_season=2024 --json',
    )
    .action(async (notebook: string, options) => {
      const { evaluateCommand } = await import('./evaluate.js');
      exitCode = await evaluateCommand({ notebook, ...options });
    });
  command
    .command('trace')
    .summary('show what a figure stands on')
    .description(
      'Shows a figure’s formula, what it is made from, and the records counted and left out, by file and line. ' +
        'A cell of a sheet is named SHEET.COLUMN with its row, such as by_station.interception[alder-landing].',
    )
    .argument('<notebook>', 'a notebook file (CommonMark)')
    .argument('<figure>', 'the name of a figure')
    .requiredOption('--store <folder>', 'the store to ask')
    .option('--only <field=value>', 'count only records with that value (may be given several times)', addWord)
    .option('--with <input=value>', 'with another value for an input (may be given several times)', addWord)
    .option('--json', 'print the account as JSON')
    .addHelpText(
      'after',
      '\nExample:\n  rampbook trace notebooks/season.md intercepted --store store --only station=heron-point --with this_season=2024',
    )
    .action(async (notebook: string, figure: string, options) => {
      const { traceCommand } = await import('./trace.js');
      exitCode = await traceCommand({ notebook, figure, ...options });
    });
  command
    .command('compare')
    .summary('say what changed between two renderings')
    .description(
      'Compares two pages, or the pages of two folders by their names, from what the pages carry; no store is asked. Says which ' +
        'figures and sheets differ, by how much, whether beyond the former interval, and what may have moved each: data, formula, ' +
        'input, choice of records, resampling or program.',
    )
    .argument('<old>', 'a page that rampbook report wrote, or a folder of them')
    .argument('<new>', 'a later rendering of it, or a folder of them')
    .option('--to <page>', 'write the comparison as a page too')
    .option('--json', 'print every difference as JSON')
    .addHelpText(
      'after',
      '\nExample:\n  rampbook compare reports-2024/season.html reports-2025/season.html --to changes.html',
    )
    .action(async (old: string, later: string, options) => {
      const { compareCommand } = await import('./compare.js');
      exitCode = await compareCommand({ old, later, ...options });
    });
  command
    .command('start')
    .summary('set up a folder for a season of your own')
    .description(
      'Sets up a folder with a crosswalk to fill in (every field named, and what a person must decide marked), the notebooks to ' +
        'make your own, and a .gitignore that keeps records and keys out of version control. The folder must be new or empty. ' +
        'The notebooks ask about one season and the one before it; what was decided for the demo alone, such as wages and ' +
        'budgets, is left blank, and a page says so until it is filled in.',
    )
    .argument('<folder>', 'the folder to set up')
    .option('--season <year>', 'the season to ask about; else the year in the folder’s name, or this year')
    .addHelpText('after', '\nExample:\n  rampbook start season-2026')
    .action(async (folder: string, options: { readonly season?: string }) => {
      const { startCommand } = await import('./start.js');
      exitCode = await startCommand(folder, options.season);
    });
  command
    .command('desk')
    .summary('work at notebooks in the browser')
    .description(
      'Opens a folder’s notebooks in the browser: inputs, formulas, headings and prose are changed where they stand, values and ' +
        'intervals follow, and every finished change is saved in its own line of the document. What was changed elsewhere ' +
        'meanwhile is shown and never overwritten unasked. Listens on 127.0.0.1 only, under an address that nobody can guess.',
    )
    .argument('[folder]', 'the folder of the notebooks', 'notebooks')
    .requiredOption('--store <folder>', 'the store to ask')
    .option('--port <number>', 'the port to listen on; any free one without')
    .option('--open', 'open the browser too')
    .addHelpText('after', '\nExample:\n  rampbook desk notebooks --store store --open')
    .action(async (place: string, options) => {
      const { deskCommand } = await import('./desk.js');
      exitCode = await deskCommand({ place, ...options });
    });
  command
    .command('watch')
    .summary('see a notebook’s report follow every save')
    .description(
      'Shows a notebook’s report in the browser, on this machine only, and replaces what changed whenever the document is saved ' +
        'or the store is imported anew. The document itself is only read.',
    )
    .argument('<notebook>', 'a notebook file (CommonMark)')
    .requiredOption('--store <folder>', 'the store to ask')
    .option('--port <number>', 'the port to listen on; any free one without')
    .option('--open', 'open the browser too')
    .addHelpText('after', '\nExample:\n  rampbook watch notebooks/season.md --store store --open')
    .action(async (place: string, options) => {
      const { watchCommand } = await import('./desk.js');
      exitCode = await watchCommand({ place, ...options });
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
