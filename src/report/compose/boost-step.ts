import type { NextStep } from '../../audit/boost/next-step.ts';
import type { Wording } from '../../wording/template.ts';
import { type Block, heading, type Inline, listed, paragraph, strong } from '../document.ts';

/** How what is watched is called. */
const names: Readonly<Record<string, string>> = {
	'log.boost_peak': 'Boost',
	'log.lambda_leanest': 'Lambda',
	'log.rail_held_low': 'Fuel pressure',
	'log.knock_most': 'Knock retard',
	'log.duty_peak': 'Injector duty',
	'log.charge_temp_end': 'Intake air temperature',
	'log.meter_volts_peak': 'Air meter',
};

/** The next step in boost as a card: the cut first, what to log, what to see, when to lift; or why there is none. */
export function boostStep(next: NextStep | null, wording: Wording): Block[] {
	if (!next || (next.steps.length === 0 && next.refused.length === 0)) return [];
	const title = { ...heading(2, 'The next step in boost'), card: true } as Block;
	const [step] = next.steps;
	if (!step)
		return [
			title,
			...listed(
				[paragraph(strong('None now. '), 'Boost stays where it is until each of these is settled:')],
				next.refused.map(words => [words]),
			),
		];
	const show = (id: string, value: number) => wording.show(id, value) ?? '';
	const [cut, ...watched] = step.watch;
	const lines = watched.map(({ quantity, expect, lift_at }): Inline[] => [
		strong(`${names[quantity] ?? wording.label(quantity)}: `),
		expect === null ? 'not worked out' : show(quantity, expect),
		...(lift_at === null ? ['.'] : [', ', strong('lift at '), `${show(quantity, lift_at)}.`]),
	]);
	return [
		title,
		paragraph(strong(`${show('boost.target', step.boost)}, and no more. `), step.why),
		{
			is: 'steps',
			items: [
				[
					strong('First of all: '),
					`set the over-boost cut to ${show('boost.target', cut!.expect!)}. Prove it with the limit at ${show('boost.target', cut!.expect! - step.boost)} to twice that for the test, then set it back.`,
				],
				[
					'Log two pulls, warm, in the same gear, full to 90 % of the redline: engine speed, boost, lambda, fuel pressure, intake air temperature, knock, spark advance.',
				],
				['Lift at once at any of the figures below. That is never in place of the cut.'],
			],
		},
		...listed([paragraph('What to see, and when to lift:')], lines),
	];
}
