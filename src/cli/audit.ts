import { extname } from 'node:path';
import { assess } from '../audit/assess.ts';
import { gateOpen } from '../audit/stages.ts';
import type { Stage } from '../rulebook/rulebook.ts';
import type { UnitSet } from '../sheet/question.ts';
import { BadUsage, exit } from './exit.ts';
import { loadModel } from './model.ts';
import { today } from './options.ts';
import { print } from './say.ts';
import { openSheet } from './sheet.ts';
import { version } from './version.ts';

export interface AuditFlags {
	readonly out?: string;
	readonly json?: boolean;
	readonly lines?: boolean;
	readonly units?: UnitSet;
	readonly rules?: readonly string[];
	readonly gate?: Stage;
	readonly date?: string;
	readonly draws?: number;
	readonly record?: boolean;
}

const usualDraws = 400;

/** `swap-audit audit SHEET`: judges one sheet. */
export async function audit(argument: string, flags: AuditFlags): Promise<number> {
	const ending = flags.out === undefined ? null : extname(flags.out).toLowerCase();
	if (ending !== null && !['.md', '.html', '.json', '.csv'].includes(ending)) {
		throw new BadUsage(
			`--out: found ${JSON.stringify(flags.out)}; accepted: a file ending in .md, .html, .json or .csv`,
		);
	}
	const model = await loadModel(flags.rules ?? []);
	const opened = openSheet(argument, model.rulebook.questions);
	const assessment = assess(model, opened, {
		date: flags.date ?? today(),
		units: flags.units ?? opened.sheet.units,
		tool: version,
		draws: flags.draws ?? usualDraws,
	});
	print(JSON.stringify(assessment.audit, null, 2));
	return flags.gate && !gateOpen(assessment.audit.stages, flags.gate) ? exit.notPassed : exit.done;
}
