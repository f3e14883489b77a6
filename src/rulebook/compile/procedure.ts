import type { Procedure, Step } from '../procedure.ts';
import { type Rule, type Stage, stages } from '../rulebook.ts';
import { compileYesNo } from './expression.ts';
import { type Fields, quote } from './fields.ts';
import type { Names } from './names.ts';
import { checkWords, readText } from './words.ts';

/** What a procedure may name. */
export interface ProcedureNames {
	readonly names: Names;
	readonly cautions: ReadonlySet<string>;
	readonly rules: ReadonlyMap<string, Rule>;
}

/** One procedure: a first crank, fire, drive, boost (rules/procedures/). */
export function readProcedure(root: Fields, known: ProcedureNames): Procedure {
	const stage = root.oneOf('stage', stages, 'crank');
	const procedure: Procedure = {
		title: root.text('procedure'),
		stage,
		place: root.number('place'),
		steps: root.innerList('steps').map(inner => readStep(inner, stage, known)),
	};
	root.refuseRest();
	return procedure;
}

function readStep(fields: Fields, stage: Stage, { names, cautions, rules }: ProcedureNames): Step {
	const step: Step = {
		do: readText(fields, 'do'),
		applies: compileYesNo(fields, 'applies', names),
		only_when: compileYesNo(fields, 'only_when', names),
		relies: fields.texts('relies', false),
		read: readText(fields, 'read', false),
		stop: readText(fields, 'stop', false),
		cautions: fields.texts('cautions', false),
	};
	for (const key of ['do', 'read', 'stop'] as const) checkWords(fields, key, step[key], names);
	for (const id of step.cautions)
		if (!cautions.has(id)) fields.report('cautions', `${quote(id)} is not in rules/cautions.yaml`);
	for (const id of step.relies) {
		const rule = rules.get(id);
		if (!rule) fields.report('relies', `${quote(id)} is none of the rules`);
		else if (stages.indexOf(rule.stage) > stages.indexOf(stage))
			fields.report(
				'relies',
				`${quote(id)} is settled before stage ${rule.stage} only, after this procedure of stage ${stage}`,
			);
	}
	fields.refuseRest();
	return step;
}
