import type { Assessment } from '../../audit/assess.ts';
import type { ExpectedReading } from '../../audit/audit.ts';
import { type Kind, kept } from '../../units/kinds.ts';
import { unitNamed } from '../../units/names.ts';
import { shownUnit } from '../../units/shown.ts';
import { write } from '../../units/write.ts';
import { type Block, heading, paragraph, strong } from '../document.ts';

const states: Readonly<Record<ExpectedReading['state'], string>> = {
	'key-on': 'Key on, engine stopped',
	cranking: 'Cranking',
	idle: 'Idle, warm',
	'3000-rpm': 'At 3000 rpm, warm',
	'full-load': 'Full load',
};

/** What you should read: the card to keep beside the gauges. */
export function readingCard(assessment: Assessment): Block[] {
	const blocks = (Object.keys(states) as ExpectedReading['state'][]).flatMap((state): Block[] => {
		const own = assessment.audit.readings.filter(reading => reading.state === state && reading.value !== null);
		if (own.length === 0) return [];
		return [
			paragraph(strong(states[state])),
			{ is: 'items', items: own.map(reading => [readingLine(reading, assessment)]) },
		];
	});
	return blocks.length > 0 ? [heading(2, 'What you should read'), ...blocks] : [];
}

/** One reading in words: what to expect, from what to what, and what was measured. */
export function readingLine(
	{ title, value, low, high, unit, reading, measured, assumed }: ExpectedReading,
	{ wording }: Assessment,
): string {
	const kind = (Object.keys(kept) as Kind[]).find(other => kept[other] === unit) ?? 'ratio';
	const own = reading === 'injector-duty' ? unitNamed('%', ['ratio'])! : shownUnit(kind, wording.units);
	const show = (number: number) => write(number, own);
	const band =
		low !== null && high !== null
			? `${show(low)} to ${show(high)}`
			: low !== null
				? `${show(low)} or more`
				: `${show(value!)}`;
	const off = measured !== null && ((low !== null && measured < low) || (high !== null && measured > high));
	const seen = measured === null ? '' : `; you read ${show(measured)}${off ? ', which is outside' : ''}`;
	return `${title}: ${band}${seen}${assumed.length > 0 ? ' (partly assumed)' : ''}`;
}
