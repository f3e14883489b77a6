import type { ClosedCycle } from './closed-cycle.ts';
import { pistonDrop, pistonSlope, sweptVolume } from './slider-crank.ts';
import { burnRate, unburntAt, usualPower } from './wiebe.ts';

/** Exponent of the motored pressure in Woschni's gas speed: usual for a gasoline engine turned without firing. */
const motoredExponent = 1.3;

/** What an angle brings, in this order: volume m3, its slope m3/deg, share unburnt, share burnt per deg, motored pressure Pa. */
export const angleFigures = 5;

/** What the crank angle alone decides in one cycle: where the piston stands and how far the burn is. */
export class CrankAngle {
	private readonly stroke: number;
	private readonly rod: number;
	private readonly clearance: number;
	private readonly piston: number;
	private readonly start: number;
	private readonly duration: number;
	private readonly power: number;
	private readonly woschni: boolean;
	/** Motored pressure x V^1.3; until the spark nothing burns above it. */
	private motored = Number.POSITIVE_INFINITY;

	constructor({ cylinder, burn, walls }: ClosedCycle) {
		const { bore, stroke, rod, ratio } = cylinder;
		const swept = sweptVolume(bore, stroke);
		this.stroke = stroke;
		this.rod = rod;
		this.clearance = swept / (ratio - 1);
		this.piston = swept / stroke;
		this.start = burn.start;
		this.duration = burn.duration;
		this.power = burn.power ?? usualPower;
		this.woschni = walls.film === 'woschni';
	}

	/** From here on the charge burns: pressure above the motored one stirs the gas. Pa absolute, m3. */
	light(pressure: number, volume: number): void {
		this.motored = pressure * volume ** motoredExponent;
	}

	/** Writes what an angle brings, deg from top dead center. */
	place(angle: number, into: Float64Array): void {
		const volume = this.clearance + this.piston * pistonDrop(this.stroke, this.rod, angle);
		into[0] = volume;
		into[1] = this.piston * pistonSlope(this.stroke, this.rod, angle);
		const y = (angle - this.start) / this.duration;
		into[2] = unburntAt(y, this.power);
		into[3] = burnRate(y, into[2]!, this.power) / this.duration;
		into[4] = this.woschni ? this.motored * Math.exp(-motoredExponent * Math.log(volume)) : 0;
	}
}
