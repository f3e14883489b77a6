import { isNumber, isObject } from './fault.ts';
import { type SheetProblem, shown } from './problem.ts';

/** What is wrong with the audits that a sheet keeps. The program writes them, but a hand or a merge may have been there. */
export function* auditProblems(audits: unknown): Generator<SheetProblem> {
	if (!Array.isArray(audits)) {
		yield { path: 'audits', found: shown(audits), accepted: 'the list of audits that the program keeps, or []' };
		return;
	}
	for (const [index, record] of audits.entries()) {
		const path = `audits[${index}]`;
		if (!isObject(record)) yield { path, found: shown(record), accepted: 'an audit as the program keeps it' };
		else
			for (const [key, { fits, accepted }] of Object.entries(parts))
				if (!fits(record[key])) yield { path: `${path}.${key}`, found: shown(record[key]), accepted };
	}
}

const isText = (value: unknown): value is string => typeof value === 'string';

const everyValue = (value: unknown, fits: (inside: unknown) => boolean): boolean =>
	isObject(value) && Object.values(value).every(fits);

const isCodes = (value: unknown): boolean => value === undefined || isText(value);

/** What an audit record holds (see AuditRecord); other keys are kept as they are. */
const parts: Readonly<Record<string, { fits(value: unknown): boolean; accepted: string }>> = {
	date: { fits: value => isText(value) && /^\d{4}-\d{2}-\d{2}$/.test(value), accepted: 'a day as YYYY-MM-DD' },
	name: { fits: value => value === undefined || isText(value), accepted: 'a text' },
	rules: { fits: isText, accepted: 'a text' },
	verdicts: {
		fits: value => Array.isArray(value) && value.every(isVerdict),
		accepted: 'a list like {"rule": "injectors.duty", "subject": null, "verdict": "fails"}',
	},
	held: { fits: isCodes, accepted: 'a text' },
	undecided: { fits: isCodes, accepted: 'a text' },
	logs: {
		fits: value => value === undefined || (Array.isArray(value) && value.every(isText)),
		accepted: 'a list of texts',
	},
	numbers: { fits: value => everyValue(value, isNumber), accepted: 'an object of numbers' },
	answers: { fits: value => isText(value) || everyValue(value, isText), accepted: 'a text' },
};

/** Whether something is a verdict of a record. */
export function isVerdict(value: unknown): boolean {
	if (!isObject(value)) return false;
	const { rule, subject, verdict, distance } = value;
	return (
		isText(rule) &&
		(subject === undefined || subject === null || isText(subject)) &&
		isText(verdict) &&
		(distance === undefined || distance === null || isNumber(distance))
	);
}
