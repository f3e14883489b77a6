import { type Procedure, type Step, stages } from '../rulebook.ts';
import { compileYesNo } from './expression.ts';
import { type Fields, quote } from './fields.ts';
import type { Names } from './names.ts';
import { checkWords } from './words.ts';

/** One procedure: a first crank, fire, drive, boost (rules/procedures/). */
export function readProcedure(root: Fields, names: Names, cautions: ReadonlySet<string>): Procedure {
	const procedure: Procedure = {
		title: root.text('procedure'),
		stage: root.oneOf('stage', stages, 'crank'),
		place: root.number('place'),
		steps: root.innerList('steps').map(inner => readStep(inner, names, cautions)),
	};
	root.refuseRest();
	return procedure;
}

function readStep(fields: Fields, names: Names, cautions: ReadonlySet<string>): Step {
	const step: Step = {
		do: fields.text('do'),
		applies: compileYesNo(fields, 'applies', names),
		read: fields.text('read', false),
		stop: fields.text('stop', false),
		cautions: fields.texts('cautions', false),
	};
	for (const key of ['do', 'read', 'stop'] as const) checkWords(fields, key, step[key], names);
	for (const id of step.cautions)
		if (!cautions.has(id)) fields.report('cautions', `${quote(id)} is not in rules/cautions.yaml`);
	fields.refuseRest();
	return step;
}
