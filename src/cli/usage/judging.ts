import { type Command, Option } from 'commander';
import { judgeOptions, packOption, unfittedOption, unitsOption } from '../options/flags.ts';
import { BadUsage } from '../process/exit.ts';
import { print } from '../process/output.ts';
import { type Status, sheetWords } from './words.ts';

export function audit(program: Command, status: Status): void {
	judgeOptions(
		program
			.command('audit')
			.summary('judge a sheet')
			.description(
				'Judges a sheet and prints the audit as Markdown. Printing changes nothing; --out keeps a record in the sheet.',
			)
			.argument('[sheet]', sheetWords),
	)
		.addOption(
			new Option(
				'--lines',
				'one sheet a line on standard input, one audit a line printed; without draws, so that what holds in doubt counts as passed',
			),
		)
		.addOption(new Option('--schema', 'print the JSON Schema of an audit; judges nothing'))
		.action(async (sheet: string | undefined, flags) => {
			if (flags.schema) {
				const { auditSchema } = await import('../../report/audit-schema.ts');
				print(JSON.stringify(auditSchema, null, 2));
				return;
			}
			if (flags.lines) {
				if (sheet !== undefined) throw new BadUsage('audit --lines reads the sheets from standard input: name none');
				refuseWithLines(flags);
				status(await (await import('../commands/audit-jsonl.ts')).auditJsonl(flags));
				return;
			}
			if (sheet === undefined) throw new BadUsage('audit: name a sheet: a path, a name, or - for standard input');
			status(await (await import('../commands/audit.ts')).audit(sheet, flags));
		});
}

export function recheck(program: Command, status: Status): void {
	judgeOptions(
		program
			.command('recheck')
			.summary('judge again and say what changed')
			.description('Judges a sheet again, says what changed since an earlier audit, and keeps a record in the sheet.')
			.argument('<sheet>', sheetWords),
	)
		.addOption(
			new Option(
				'--since <day or file>',
				'compare with this: a day, an audit as JSON, another sheet (default: the last audit in the sheet)',
			),
		)
		.action(async (sheet: string, flags) =>
			status(await (await import('../commands/audit.ts')).audit(sheet, { ...flags, since: flags.since ?? null })),
		);
}

/** The parts of an audit that are commands of their own. */
export function parts(program: Command, status: Status): void {
	const parts = {
		limits: 'what gives out first as boost goes up',
		next: 'what to measure next',
		readings: 'what you should read on gauges and meters',
	} as const;
	for (const [name, words] of Object.entries(parts)) {
		program
			.command(name)
			.summary(words)
			.description(`Prints one part of the audit alone: ${words}.`)
			.argument('<sheet>', sheetWords)
			.option('--json', 'print a JSON array')
			.addOption(unitsOption())
			.addOption(packOption())
			.addOption(unfittedOption())
			.action(async (sheet: string, flags) =>
				status(await (await import('../commands/parts.ts')).printPart(name as keyof typeof parts, sheet, flags)),
			);
	}
}

/** What `--lines` cannot do: it prints every audit whole, without draws, and leaves every sheet alone. */
function refuseWithLines(flags: Readonly<Record<string, unknown>>): void {
	for (const name of ['gate', 'out', 'draws'])
		if (flags[name] !== undefined) throw new BadUsage(`audit --lines takes no --${name}: leave it out`);
	if (flags.record === true) throw new BadUsage('audit --lines takes no --record: leave it out');
}
