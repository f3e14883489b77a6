import type { Assessment } from '../../audit/assess.ts';
import type { ExpectedReading } from '../../audit/audit.ts';
import { canonicalUnits, type Kind } from '../../units/kinds.ts';
import { unitNamed } from '../../units/names.ts';
import { shownUnit } from '../../units/shown.ts';
import { fromCanonical, toCanonical, type Unit } from '../../units/unit.ts';
import { write } from '../../units/write.ts';
import { type Block, code, type Inline, listed, paragraph, strong } from '../document.ts';
import { fittedTo } from './fitted.ts';
import { lower, rangeText } from './names.ts';

const states: Readonly<Record<ExpectedReading['state'], string>> = {
	'key-on': 'Key on, engine stopped',
	cranking: 'Cranking',
	idle: 'Idle, warm',
	'3000-rpm': 'At 3000 rpm, warm, no load',
	'full-load': 'Full load',
};

/** What you should read: the card to keep at the gauges, and what it still lacks. */
export function readingCard(assessment: Assessment): Block[] {
	const { readings } = assessment.audit;
	const cards = (Object.keys(states) as ExpectedReading['state'][]).flatMap(state =>
		listed(
			[paragraph(strong(states[state]))],
			readings.filter(reading => reading.state === state && reading.value !== null).map(line(assessment)),
		),
	);
	const open = readings
		.filter(({ value }) => value === null)
		.map(({ title, state, missing }): Inline[] => [
			`${title} (${lower(states[state])}): `,
			...(missing.length > 0 ? ['needs ', code(missing.join(', '))] : ['could not be worked out']),
			'.',
		]);
	if (cards.length + open.length === 0) return [];
	return [
		{ is: 'heading', level: 2, text: 'What you should read', card: true },
		...fittedTo(assessment.audit),
		...cards,
		...listed([paragraph('Not worked out yet:')], open, 'small'),
	];
}

/** No gauge or meter at a car shows more than two decimals. */
const asGaugesShow = (canonicalUnits: number, unit: Unit): number =>
	toCanonical(Number(fromCanonical(canonicalUnits, unit).toFixed(2)), unit);

/** One reading in words: what to expect, from what to what, and what was measured. */
const line =
	({ wording }: Assessment) =>
	({ title, low, high, unit, reading, measured, assumed }: ExpectedReading): Inline[] => {
		const kind = (Object.keys(canonicalUnits) as Kind[]).find(other => canonicalUnits[other] === unit) ?? 'ratio';
		const own = reading === 'injector-duty' ? unitNamed('%', ['ratio'])! : shownUnit(kind, wording.units);
		const show = (number: number) => write(asGaugesShow(number, own), own);
		const band = high === null ? `${show(low!)} or more` : rangeText(show(low!), show(high));
		const off = measured !== null && (measured < low! || (high !== null && measured > high));
		const seen = measured === null ? '' : `; you read ${show(measured)}${off ? ', which is outside' : ''}`;
		return [`${title}: ${band}${seen}${assumed.length > 0 ? ' (partly assumed)' : ''}`];
	};
