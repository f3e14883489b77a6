import { type Stage, stages } from '../../rulebook/rulebook.ts';
import type { UnitSet } from '../../sheet/question.ts';
import { BadUsage } from '../process/exit.ts';

/** A `--units` value. */
export function readUnits(text: string): UnitSet {
	if (text === 'us' || text === 'metric') return text;
	throw new BadUsage(`--units: found ${JSON.stringify(text)}; accepted: us, metric`);
}

/** A `--gate` value. */
export function readStage(text: string): Stage {
	if ((stages as readonly string[]).includes(text)) return text as Stage;
	throw new BadUsage(`--gate: found ${JSON.stringify(text)}; accepted: ${stages.join(', ')}`);
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

/** Today, where the command runs. */
export function today(): string {
	const now = new Date();
	const two = (part: number) => String(part).padStart(2, '0');
	return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
