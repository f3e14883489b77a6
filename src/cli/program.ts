import { Command, CommanderError, Option } from 'commander';
import { BadUsage, exit } from './exit.ts';
import { readDate, readDraws, readStage, readUnits } from './options.ts';
import { print, say } from './say.ts';
import { version } from './version.ts';

const sheetWords = 'a path, a name, or - for stdin';

const collect = (path: string, paths: readonly string[] = []): string[] => [...paths, path];

const unitsOption = () => new Option('--units <set>', "us or metric (default: the sheet's own)").argParser(readUnits);
const packOption = () =>
	new Option('--rules <path>', 'add a rule pack: a topic file or a folder of them').argParser(collect);

/** The options that judging commands share. */
function judging(command: Command): Command {
	return command
		.addOption(
			new Option('--out <file>', 'write to a file: .md (pictures beside it), .html, .json, .csv (wiring worksheet)'),
		)
		.addOption(new Option('--json', 'the audit as JSON on stdout'))
		.addOption(unitsOption())
		.addOption(packOption())
		.addOption(
			new Option('--gate <stage>', 'end with status 1 unless this stage and all before it are ready').argParser(
				readStage,
			),
		)
		.addOption(new Option('--date <day>', 'the day to put on it (default: today)').argParser(readDate))
		.addOption(
			new Option('--draws <count>', 'draws that tell how sure a verdict is (default: 400)').argParser(readDraws),
		)
		.addOption(new Option('--record', 'keep the audit in the sheet'))
		.addOption(new Option('--no-record', 'do not keep the audit in the sheet'));
}

/** Declares every command; each loads its own code when it is called. `status` gets the exit status. */
function declare(status: (code: number) => void): Command {
	const program = new Command('swap-audit')
		.description('Audits a home-built V8 engine swap: asks, computes, judges, and writes a prioritised list.')
		.version(version)
		.exitOverride()
		.configureOutput({ writeOut: text => print(text), writeErr: text => say(text.trimEnd()) })
		.showSuggestionAfterError();
	program
		.command('interview')
		.description('answer questions about a build')
		.argument('[sheet]', 'a path or a name; one that does not exist is started')
		.option('--quick', 'the quick pass: a quarter of an hour')
		.addOption(new Option('--section <name>', 'one section only'))
		.option('--plain', 'by lines, without a drawn screen')
		.addOption(packOption())
		.action(async (sheet, flags) => status(await (await import('./interview.ts')).interview(sheet, flags)));
	judging(program.command('audit').description('judge a sheet').argument('[sheet]', sheetWords))
		.addOption(new Option('--lines', 'one sheet a line on stdin, one audit a line on stdout'))
		.addOption(new Option('--schema', 'the JSON Schema of an audit; judges nothing'))
		.action(async (sheet: string | undefined, flags) => {
			if (flags.schema) {
				const { auditSchema } = await import('../report/audit-schema.ts');
				print(JSON.stringify(auditSchema, null, 2));
				return;
			}
			if (flags.lines) {
				if (sheet !== undefined) throw new BadUsage('audit --lines reads the sheets from stdin: name none');
				status(await (await import('./lines.ts')).auditLines(flags));
				return;
			}
			if (sheet === undefined) throw new BadUsage('audit: no sheet named; give a path, a name, or - for stdin');
			status(await (await import('./audit.ts')).audit(sheet, flags));
		});
	judging(program.command('recheck').description('judge again and say what changed').argument('<sheet>', sheetWords))
		.addOption(new Option('--since <file or day>', 'compare with this (default: the last audit in the sheet)'))
		.action(async (sheet: string, flags) =>
			status(await (await import('./audit.ts')).audit(sheet, { ...flags, since: flags.since ?? null })),
		);
	const parts = {
		limits: 'what gives out first as boost goes up',
		next: 'what to measure next',
		readings: 'what you should read on gauges and meters',
	} as const;
	for (const [name, words] of Object.entries(parts)) {
		program
			.command(name)
			.description(words)
			.argument('<sheet>', sheetWords)
			.option('--json', 'as a JSON array')
			.addOption(unitsOption())
			.addOption(packOption())
			.action(async (sheet: string, flags) =>
				status(await (await import('./tables.ts')).table(name as keyof typeof parts, sheet, flags)),
			);
	}
	const rules = program.command('rules').description('the rules: list, show one, run their examples');
	const paths = '[path...]';
	rules
		.command('list')
		.description('a line a rule')
		.argument(paths, 'rule packs to add')
		.action(async packs => status((await import('./rules.ts')).list(packs)));
	rules
		.command('show')
		.description('one rule in words')
		.argument('<id>', 'a rule id')
		.argument(paths, 'rule packs to add')
		.action(async (id, packs) => status((await import('./rules.ts')).show(id, packs)));
	rules
		.command('test')
		.description('run the examples of the rules')
		.argument(paths, 'rule packs to add')
		.action(async packs => status((await import('./rules.ts')).test(packs)));
	program
		.command('quantities')
		.description('each quantity with formula, range and source')
		.argument('[id]', 'one of them')
		.option('--json', 'as a JSON array')
		.action(async (id, flags) => status((await import('./quantities.ts')).quantities(id, flags)));
	program
		.command('questions')
		.description('the question catalogue')
		.option('--json', 'as a JSON array')
		.option('--schema', 'the JSON Schema of a sheet')
		.action(async flags => status((await import('./questions.ts')).questions(flags)));
	program.argument('[nothing]').action(async (extra: string | undefined) => {
		if (extra !== undefined) throw new BadUsage(`${JSON.stringify(extra)} is no command; see swap-audit --help`);
		status(await (await import('./interview.ts')).interview(undefined, {}));
	});
	return program;
}

/** Runs the command line. Gives the exit status of usage errors and help; throws what the commands throw. */
export async function run(args: readonly string[]): Promise<number> {
	let code: number = exit.done;
	try {
		await declare(status => (code = status)).parseAsync(args, { from: 'user' });
	} catch (error) {
		if (!(error instanceof CommanderError)) throw error;
		return error.exitCode === 0 ? exit.done : exit.badInput;
	}
	return code;
}
