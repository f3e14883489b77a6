import { isNumber, isObject } from './fault.ts';
import { type SheetProblem, shown } from './problem.ts';

/** So many logs are kept in a sheet; the oldest goes. */
export const mostLogs = 20;

/** What is wrong with the logs that a sheet keeps. The program writes them, but a hand or a merge may have been there. */
export function* logProblems(logs: unknown): Generator<SheetProblem> {
	if (!Array.isArray(logs) || logs.length > mostLogs) {
		yield {
			path: 'logs',
			found: shown(logs),
			accepted: `the list of logs that the program keeps, at most ${mostLogs}`,
		};
		return;
	}
	for (const [at, record] of logs.entries()) {
		const path = `logs[${at}]`;
		if (!isObject(record)) yield { path, found: shown(record), accepted: 'a log as the program keeps it' };
		else
			for (const [key, { fits, accepted }] of Object.entries(parts))
				if (!fits(record[key])) yield { path: `${path}.${key}`, found: shown(record[key]), accepted };
	}
}

interface Part {
	fits(value: unknown): boolean;
	readonly accepted: string;
}

const isText = (value: unknown): value is string => typeof value === 'string';
const isNumberOrNull = (value: unknown): boolean => value === null || isNumber(value);
const isListOf = (value: unknown, fits: (item: unknown) => boolean): boolean =>
	Array.isArray(value) && value.every(fits);
const hasEach = (value: unknown, fits: (inside: unknown) => boolean): boolean =>
	isObject(value) && Object.values(value).every(fits);

const isFigure = (value: unknown): boolean =>
	isObject(value) &&
	value.value !== undefined &&
	(value.unit === null || isText(value.unit)) &&
	isNumberOrNull(value.low) &&
	isNumberOrNull(value.high) &&
	isListOf(value.missing, isText);

const isReading = (value: unknown): boolean => Array.isArray(value) && value.length === 3 && value.every(isNumber);

const isPoint = (value: unknown): boolean =>
	isObject(value) && isNumber(value.speed) && isNumber(value.time) && hasEach(value.channels, isReading);

const isPull = (value: unknown): boolean =>
	isObject(value) && isNumber(value.pull) && isNumberOrNull(value.gear) && isListOf(value.points, isPoint);

const isChannel = (value: unknown): boolean =>
	isObject(value) && [value.channel, value.header, value.unit, value.by].every(isText) && isNumberOrNull(value.lag);

/** What a log record holds (see LogRecord); other keys are kept as they are. */
const parts: Readonly<Record<string, Part>> = {
	name: { fits: isText, accepted: 'a text' },
	sha256: { fits: value => isText(value) && /^[0-9a-f]{64}$/.test(value), accepted: '64 digits of SHA-256 in hex' },
	date: { fits: value => isText(value) && /^\d{4}-\d{2}-\d{2}$/.test(value), accepted: 'a day as YYYY-MM-DD' },
	channels: {
		fits: value => isListOf(value, isChannel),
		accepted: 'a list like {"channel": "engine_speed", "header": "RPM", "unit": "rpm", "by": "header", "lag": null}',
	},
	quantities: {
		fits: value => hasEach(value, inside => (Array.isArray(inside) ? inside.every(isFigure) : isFigure(inside))),
		accepted: 'an object of figures like {"value": 1, "unit": "Pa", "low": null, "high": null, "missing": []}',
	},
	points: {
		fits: value => isListOf(value, isPull),
		accepted: 'a list like {"pull": 1, "gear": null, "points": []}',
	},
	answers: { fits: value => hasEach(value, isObject), accepted: 'an object of answers' },
	fit: { fits: value => value === null || isObject(value), accepted: 'an object, or null' },
	rests_on: { fits: value => hasEach(value, isObject), accepted: 'an object of answers' },
};
