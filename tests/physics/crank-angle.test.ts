import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleFigures, CrankAngle } from '../../src/physics/crank-angle.ts';
import { cylinderVolume } from '../../src/physics/slider-crank.ts';
import { between, seeded } from './spoilt.ts';

const cylinder = { bore: 0.1, stroke: 0.09, rod: 0.15, ratio: 9 };
const burn = { start: -20, duration: 50, power: 3.4 };

/** What an angle brings; `spark`: once the charge burns, from 10 bar in 0.2 l. */
function at(angle: number, { of = cylinder, spark = false } = {}) {
	const crank = new CrankAngle(of, burn);
	if (spark) crank.light(10e5, 0.2e-3);
	const into = angleFigures();
	crank.place(angle, into);
	const [volume, slope, unburnt, rate, motored, filmShare] = into as unknown as [
		number,
		number,
		number,
		number,
		number,
		number,
	];
	return { volume, slope, unburnt, rate, motored, filmShare };
}

describe('the piston', () => {
	it('leaves the volume of the cylinder, which changes as its slope says, whatever the rod and the angle', () => {
		fc.assert(
			fc.property(
				between(0.05, 0.15),
				between(0.55, 4),
				between(5, 16),
				between(-360, 360),
				(stroke, rod, ratio, angle) => {
					const of = { bore: 0.1, stroke, rod: rod * stroke, ratio };
					const { volume, slope } = at(angle, { of });
					expect(volume / cylinderVolume(of, angle)).toBeCloseTo(1, 12);
					const near = (cylinderVolume(of, angle + 1e-3) - cylinderVolume(of, angle - 1e-3)) / 2e-3;
					expect(slope * 1e6).toBeCloseTo(near * 1e6, 4);
				},
			),
			seeded,
		);
	});

	it('goes as a pure sine on a rod without end', () => {
		const { volume, slope } = at(90, { of: { ...cylinder, rod: Number.POSITIVE_INFINITY } });
		const area = (Math.PI / 4) * 0.1 ** 2;
		expect(slope / (area * 0.045 * (Math.PI / 180))).toBeCloseTo(1, 12);
		expect(volume / (area * (0.09 / 8 + 0.045))).toBeCloseTo(1, 12);
	});
});

describe('the burn', () => {
	it('has not begun before the spark: nothing burns, and nothing stands above the motored pressure', () => {
		expect(at(10)).toMatchObject({ unburnt: 1, rate: 0, motored: Number.POSITIVE_INFINITY });
	});

	it('follows its curve from there, by deg', () => {
		const left = (angle: number) => Math.exp(-5 * ((angle + 20) / 50) ** 3.4);
		for (const angle of [-15, 0, 20]) {
			const { unburnt, rate } = at(angle, { spark: true });
			expect(unburnt).toBeCloseTo(left(angle), 12);
			expect(rate).toBeCloseTo((left(angle - 1e-4) - left(angle + 1e-4)) / 2e-4, 8);
		}
	});

	it('leaves the motored pressure to fall with the volume to 1.3 from where it begins', () => {
		const { motored, volume } = at(40, { spark: true });
		expect(motored / (10e5 * (0.2e-3 / volume) ** 1.3)).toBeCloseTo(1, 12);
	});
});

it("the volume's share of the film coefficient goes with volume to -0.55", () => {
	const [top, later] = [at(0), at(70)];
	expect(later.filmShare / top.filmShare).toBeCloseTo((later.volume / top.volume) ** -0.55, 12);
});
