import { describe, expect, test } from 'vitest';
import { slotNamed } from '../../../src/graph/graph.ts';
import { evaluate } from '../../../src/graph/solve.ts';
import { fullLoadCycle } from '../../../src/physics/full-load.ts';
import type { FullLoad } from '../../../src/physics/full-load-engine.ts';
import { knockIntegral } from '../../../src/physics/knock.ts';
import { buildSheet } from '../../support/model.ts';
import { close, num, sheetOf, stateOf } from '../by-hand.ts';

const best = 5400;
const peak = 3500;
const solved = () =>
	stateOf(
		sheetOf(
			{
				'engine.peak_rpm': num(best, 'rpm'),
				'engine.dyno_curve': undefined,
				'engine.peak_torque_rpm': num(peak, 'rpm'),
			},
			buildSheet('boosted'),
		),
	);

function nominalEngine(): FullLoad {
	const { graph, values } = solved();
	return (values[slotNamed(graph, 'engine.cycle')] as unknown as { engine: FullLoad }).engine;
}

/** The engine's own cycle at another speed, spark and filling. */
function integralAt(speed: number, advance: (best: number) => number, filling: number): number {
	const engine = nominalEngine();
	const there = {
		...engine,
		speed,
		advance: advance(engine.advance),
		volumetricEfficiency: engine.volumetricEfficiency * filling,
	};
	return knockIntegral(fullLoadCycle(there), speed, 98);
}

const worst = (full: number, drop: number, ethanol = 0.1) => {
	const given = {
		'engine.peak_torque_rpm': peak,
		'engine.torque_rise': 1.16,
		'boost.full_rpm': full,
		'ignition.torque_peak_drop': drop,
		'fuel.ethanol_share': ethanol,
		'fuel.octane_ron': 98,
	};
	return evaluate(solved(), ['engine.knock_worst'], given)[0] as unknown as { integral: number; speed: number } | null;
};

describe('the point closest to knock', () => {
	test('full boost before the torque peak: spark follows its slope on, filling is that of the peak, up by half of its rise', () => {
		// From 5400 to 3500 the spark goes down by 1 deg; to 2600 in proportion.
		const { integral, speed } = worst(2600, 1)!;
		expect(speed).toBe(2600);
		close(
			integral,
			integralAt(2600, spark => spark - (best - 2600) / (best - peak), 1.08),
			'integral',
		);
	});

	test('far before it the spark goes half as far again and no further', () => {
		close(
			worst(1800, 1)!.integral,
			integralAt(1800, spark => spark - 1.5, 1.08),
			'integral',
		);
	});

	test('after it: on the way between, in spark and in filling', () => {
		const back = (best - 4450) / (best - peak);
		expect(back).toBe(0.5);
		close(
			worst(4450, 0)!.integral,
			integralAt(4450, spark => spark, 1.04),
			'integral',
		);
	});

	test('where much spark is taken out at the peak it is best power', () => {
		const { integral, speed } = worst(2600, 20)!;
		expect(speed).toBe(best);
		close(
			integral,
			integralAt(best, spark => spark, 1),
			'integral',
		);
	});

	test('is not known to the correlation over a fifth of ethanol', () => {
		expect(worst(2600, 1, 0.2)).not.toBeNull();
		expect(worst(2600, 1, 0.21)).toBeNull();
	});
});
