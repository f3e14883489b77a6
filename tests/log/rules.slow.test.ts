import { describe, expect, it } from 'vitest';
import { withAnswer } from '../../src/sheet/sheet.ts';
import { counts } from '../counts.ts';
import { judgedLog, rulesThat } from '../support/judged-log.ts';
import { buildSheet } from '../support/model.ts';
import { recording, recordingsAreHere } from '../support/recordings.ts';
import { type Driven, simulateDrive } from '../support/simulated-drive.ts';

const psi = 6894.757;

/** Each rule with a drive in which only that is wrong; rules that the same fault must raise as well stand beside it. */
const faults: readonly (readonly [rule: string, drive: Partial<Driven>, also?: readonly string[]])[] = [
	['log.too-slow', { rate: 5 }],
	['log.clock-jumps', { faults: { clockBack: true } }],
	['log.channel-dead', { faults: { dead: ['spark_advance'] }, cruise: 90 }],
	['log.no-pull', { pulls: 0 }],
	['log.cranking-volts-low', { faults: { crankVolts: 9.2 } }],
	['log.cranking-slow', { faults: { crankSpeed: 100 } }],
	['log.idle-hunts', { faults: { hunting: 220 } }],
	['log.air-leak-at-idle', { cruise: 60, faults: { idleTrim: [0.14, 0.13] } }],
	['log.lean-with-load', { cruise: 60, faults: { cruiseTrim: [0.13, 0.12] } }],
	['log.lean-everywhere', { cruise: 60, faults: { idleTrim: [0.15, 0.15], cruiseTrim: [0.14, 0.15] } }],
	['log.rich-everywhere', { cruise: 60, faults: { idleTrim: [-0.15, -0.15], cruiseTrim: [-0.14, -0.15] } }],
	['log.one-bank', { cruise: 60, faults: { idleTrim: [0.07, -0.06], cruiseTrim: [0.07, -0.06] } }],
	['log.charging-low', { faults: { charging: 12.7 }, cruise: 90 }],
	['log.charging-high', { faults: { charging: 15.4 } }],
	['log.coolant-high', { faults: { coolant: 392 }, cruise: 300 }],
	['log.coolant-jumps', { cruise: 60, faults: { coolantJumps: 12 } }],
	['log.temperatures-disagree', { cold: 285, faults: { coldOff: -12 } }],
	['log.pressure-sensor-off', { faults: { manifoldOff: 7000 } }],
	['log.oil-pressure-low', { faults: { oilPressure: 0.28 } }],
	['log.lean-under-load', { faults: { leanOnTop: 0.08 } }],
	['log.lean-under-load', { faults: { leanBuilding: 0.15 } }],
	['log.banks-differ', { faults: { banksApart: 0.06 } }],
	['log.knock', { faults: { knock: { retard: 3, readings: 3 } } }],
	['log.spark-over-meant', { faults: { advance: 5 } }],
	['log.stumbles', { rate: 25, faults: { stumbles: 3 } }],
	['log.duty-over', { faults: { injectorFlow: 0.55 } }],
	['log.across-falls', { faults: { railFalls: 10 * psi } }],
	['log.pump-volts-fall', { faults: { pumpLoss: 1.2 } }],
	['log.meter-at-ceiling', { faults: { meterTop: 3.6 } }],
	['log.boost-over-target', { faults: { overTarget: 2 * psi } }],
	['log.boost-creeps', { faults: { creep: 4 * psi } }],
	['log.boost-falls', { faults: { fade: 4 * psi } }],
	['log.charge-hot', { faults: { hotCharge: 130 } }],
	['log.clutch-slips', { faults: { slip: 0.1 } }],
	['log.over-redline', { faults: { lastSpeed: 6200 } }],
	['log.throttle-short', { faults: { throttleOpen: 3.7 } }],
	['log.oil-drops', { faults: { oilDrops: 0.5 } }],
	['log.speed-wrong', { faults: { speedOff: 0.08 } }],
	['log.air-and-fuel-disagree', { faults: { injectorFlow: 0.8 } }],
];

/** A drive of a minute and a half, ten rows a second: enough for a fault to show. */
const short: Partial<Driven> = { rate: 10, cruise: 12, idle: 20, pulls: 1 };

/** The simulator drives the boosted build of rules/examples, with or without its boost. */
const boosted = buildSheet('boosted');
const unboosted = withAnswer(boosted, 'boost.kind', { value: 'none' });

describe('a rule on logs', () => {
	for (const [rule, drive] of faults)
		it(`${rule} fails on a drive with ${JSON.stringify(drive)}`, () => {
			const { verdicts } = judgedLog(simulateDrive({ ...short, ...drive }), boosted);
			expect(rulesThat(verdicts, 'fails')).toContain(rule);
		});

	it('is not decided without the channel it needs, and does not hold', () => {
		const blind: Readonly<Record<string, readonly string[]>> = {
			'log.lean-under-load': ['lambda_1', 'lambda_2'],
			'log.knock': ['knock_retard'],
			'log.across-falls': ['fuel_pressure'],
			'log.pump-volts-fall': ['pump_volts'],
			'log.meter-at-ceiling': ['meter_volts'],
			'log.boost-over-target': ['manifold_pressure'],
			'log.charge-hot': ['charge_temp'],
			'log.clutch-slips': ['road_speed'],
			'log.oil-drops': ['oil_pressure'],
			'log.charging-low': ['battery_volts'],
			'log.throttle-short': ['throttle_volts'],
			'log.coolant-high': ['coolant_temp'],
			'log.spark-over-meant': ['spark_advance'],
			'log.lambda-unproved': ['lambda_1', 'lambda_2'],
			'log.pressure-sensor-off': ['manifold_pressure'],
		};
		const { time, channels } = simulateDrive(short);
		for (const [rule, without] of Object.entries(blind)) {
			const others = new Map([...channels].filter(([id]) => !without.includes(id)));
			const { verdicts } = judgedLog({ time, channels: others }, boosted);
			const words = verdicts.filter(one => one.rule.id === rule).map(({ verdict }) => verdict);
			expect([...new Set(words)], rule).toEqual(['cannot-tell']);
		}
	});

	it('that a dead lambda sensor would need cannot be decided, and says so', () => {
		const { verdicts } = judgedLog(simulateDrive({ ...short, faults: { dead: ['lambda_1', 'lambda_2'] } }), boosted);
		const cannot = rulesThat(verdicts, 'cannot-tell');
		expect(cannot).toContain('log.lambda-unproved');
		expect(cannot).toContain('log.lean-under-load');
	});

	it('says nothing without a log', () => {
		// Rules on each pull have no pull to speak of, and the others do not apply.
		const { verdicts } = judgedLog({ time: new Float64Array(0), channels: new Map() });
		expect(rulesThat(verdicts, 'fails')).toEqual([]);
	});
});

describe('a sound log', () => {
	it('raises nothing, whatever the car, the sensors and the logger', () => {
		const raised: Record<string, string[]> = {};
		for (let seed = 1; seed <= counts.soundDrives; seed++) {
			const blown = seed % 3 !== 0;
			const drive = simulateDrive({
				seed,
				boosted: blown,
				rate: [10, 25, 50][seed % 3 === 1 ? 1 : seed % 2 === 0 ? 0 : 2]!,
				cruise: 45,
			});
			const { verdicts } = judgedLog(drive, blown ? boosted : unboosted);
			for (const rule of rulesThat(verdicts, 'fails')) (raised[rule] ??= []).push(String(seed));
		}
		expect(raised).toEqual({});
	});

	it.skipIf(!recordingsAreHere)('of an open data set raises nothing, in any of the two builds', () => {
		for (const number of [1, 2, 3, 4])
			for (const build of [boosted, buildSheet('unboosted')]) {
				const { verdicts } = judgedLog(recording(number), build);
				const harms = verdicts
					.filter(({ verdict }) => verdict === 'fails')
					.map(({ rule }) => `${rule.id} ${rule.harm}`);
				// No pull was driven, and the car is not the one of the sheet: what is said of gearing does not count.
				expect(
					harms.filter(found => !/^log\.(no-pull|speed-wrong) /.test(found)),
					`drive ${number}`,
				).toEqual([]);
			}
	});
});
