import { describe, expect, test } from 'vitest';
import { expectedIn } from '../../src/audit/expected.ts';
import { stateOf } from '../../src/audit/logged.ts';
import type { PullPoint } from '../../src/log/points.ts';
import { drawPull } from '../../src/report/log/pull-panels.ts';
import { loggedReport } from '../support/logged-report.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { type Driven, simulateDrive } from '../support/simulated-drive.ts';

const sheet = buildSheet('boosted');
const driven = (faults: Driven['faults'] = {}) => loggedReport(simulateDrive({ pulls: 1, cruise: 20, faults }), sheet);
const sound = driven();
const expectedOf = ({ analysis }: typeof sound) =>
	expectedIn(testModel(), sheet, stateOf(testModel(), sheet), analysis);

/** The share of what was read at full that lies where it is expected. */
function inside(report: typeof sound, channel: string): number {
	const [{ pull, points }] = report.analysis.points as unknown as [{ pull: number; points: PullPoint[] }];
	const band = expectedOf(report).get(pull)!.get(channel)!;
	expect(band.length).toBeGreaterThan(8);
	const held = band.filter(({ speed, low, high }) => {
		const { value } = points.find(point => point.speed === speed)!.channels[channel]!;
		return low <= value && value <= high;
	});
	return held.length / band.length;
}

describe('what a pull is expected to show', () => {
	test('holds what a sound car of these answers shows, and not what one with other injectors or a falling rail does', () => {
		for (const channel of ['injector_pulse', 'fuel_pressure', 'meter_volts'])
			expect(inside(sound, channel), channel).toBeGreaterThan(0.7);
		expect(inside(driven({ injectorFlow: 0.7 }), 'injector_pulse')).toBe(0);
		expect(inside(driven({ railFalls: 100_000 }), 'fuel_pressure')).toBeLessThan(0.5);
	});

	test('is drawn behind the line, and said in the words of the picture; without draws there is none', () => {
		const [points] = sound.analysis.points as [(typeof sound.analysis.points)[number]];
		const { svg } = drawPull({ ...sound, expected: () => expectedOf(sound) }, points)!;
		expect(svg.match(/fill="#c9dcec"/g)).toHaveLength(3);
		expect(svg.indexOf('fill="#c9dcec"')).toBeLessThan(svg.lastIndexOf('stroke-width="2"'));
		expect(svg).toMatch(/Meter volts, V from [\d.]+ to [\d.]+, expected at the end [\d.]+ to [\d.]+/);
		expect(svg.match(/>target</g)).toHaveLength(3);
		expect(drawPull(sound, points)!.svg).not.toContain('#c9dcec');
	});
});
