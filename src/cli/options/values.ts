import { type Stage, stages } from '../../rulebook/rulebook.ts';
import type { UnitSet } from '../../sheet/question.ts';
import { BadUsage } from '../process/exit.ts';

/** A `--units` value. */
export function readUnits(text: string): UnitSet {
	if (text === 'us' || text === 'metric') return text;
	throw new BadUsage(`--units: found ${JSON.stringify(text)}; accepted: us, metric`);
}

/** A stage, of `--gate` or another option. Given twice it would be said of one stage alone. */
export function readStage(text: string, before?: Stage, option = '--gate'): Stage {
	if (before !== undefined)
		throw new BadUsage(
			`${option}: found it twice, ${before} and ${text}; accepted: one stage, which takes in all before it`,
		);
	if ((stages as readonly string[]).includes(text)) return text as Stage;
	throw new BadUsage(`${option}: found ${JSON.stringify(text)}; accepted: ${stages.join(', ')}`);
}

/** The value of an option that takes a day: one that exists. */
export function readDate(text: string, option = '--date'): string {
	const day = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : null;
	if (day && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text)) return text;
	throw new BadUsage(`${option}: found ${JSON.stringify(text)}; accepted: a day as YYYY-MM-DD`);
}

const mostDraws = 10_000;

/** A `--draws` value. */
export function readDraws(text: string): number {
	const count = Number(text);
	if (/^\d+$/.test(text) && count <= mostDraws) return count;
	throw new BadUsage(`--draws: found ${JSON.stringify(text)}; accepted: a whole number, 0 to ${mostDraws}`);
}

/** The time an evening has, min. */
export const usualEvening = 120;
const [leastMinutes, mostMinutes] = [10, 1440];

/** A `--minutes` value. */
export function readMinutes(text: string): number {
	const minutes = Number(text);
	if (/^\d+$/.test(text) && minutes >= leastMinutes && minutes <= mostMinutes) return minutes;
	throw new BadUsage(
		`--minutes: found ${JSON.stringify(text)}; accepted: a whole number, ${leastMinutes} to ${mostMinutes}`,
	);
}

/** Today, where the command runs. */
export function today(): string {
	const now = new Date();
	const two = (part: number) => String(part).padStart(2, '0');
	return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
