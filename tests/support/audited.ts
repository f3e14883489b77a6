import { type Assessment, assess } from '../../src/audit/assess.ts';
import type { AuditOptions } from '../../src/audit/audit.ts';
import type { Model } from '../../src/audit/model.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { type Answer, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { buildSheet, testModel } from './model.ts';

/** A sheet judged on a fixed day, without draws unless asked for. */
export function audited(sheet: Sheet, options: Partial<AuditOptions> = {}, model: Model = testModel()): Assessment {
	const checked = checkSheet(sheet, model.rulebook.questions);
	return assess(model, checked, { date: '2026-05-01', units: 'us', tool: '0.0.0', draws: 0, ...options });
}

/** The sheet with answers set, or taken away (undefined). */
export function changed(sheet: Sheet, answers: Readonly<Record<string, Answer | undefined>>): Sheet {
	return Object.entries(answers).reduce((now, [id, answer]) => withAnswer(now, id, answer), sheet);
}

/** The boosted build with a few things wrong, and with free text of every sort: name, note, loads, circuits. */
export function brokenBuild(text = 'word'): Sheet {
	const sheet = changed(buildSheet('boosted'), {
		'ignition.gap': { value: 0.06, unit: 'in', known: 'measured', note: `${text} gap` },
		'fuel.hose': { value: 'carburettor-rated' },
		'engine.compression': { value: [150, 151, 100, 101, 149, 152, 150, 148], unit: 'psi', known: 'measured' },
		'charging.loads': { value: [[`${text} fan`, 28]], unit: 'A', known: 'estimate' },
		'harness.circuits': {
			value: [
				{ circuit: `${text} feed`, from: `${text} box`, to: `${text} pump`, state: 'to-do', load: 12, length: 15 },
				{ circuit: `${text} lamp`, state: 'done', load: 1 },
				{ circuit: 'fuel pump', state: 'done' },
			],
		},
		'engine.oil_pressure_idle': { known: 'not-known', note: `${text} oil` },
	});
	return { ...sheet, name: `${text} mule` };
}

/** A build of which only every third answer is there. */
export function thirdOf(sheet: Sheet): Sheet {
	const ids = Object.entries(sheet.answers).flatMap(([section, inside]) =>
		Object.keys(inside).map(name => `${section}.${name}`),
	);
	return changed(sheet, Object.fromEntries(ids.filter((_, index) => index % 3 > 0).map(id => [id, undefined])));
}
