import type { ClosedCycle } from './closed-cycle.ts';
import { type Cylinder, radians, sweptVolume } from './slider-crank.ts';
import { burnInto, usualPower } from './wiebe.ts';
import { volumeShare } from './woschni.ts';

/** Exponent of the motored pressure in Woschni's gas speed: usual for a gasoline engine turned without firing. */
const motoredExponent = 1.3;

/**
 * What an angle brings, in this order: volume m3, its slope m3/deg, share unburnt, share burnt per deg, motored pressure Pa,
 * the volume's share of Woschni's film coefficient. Nothing burns, and so nothing above the motored pressure, until the spark.
 */
export const angleFigures = (): Float64Array => Float64Array.of(0, 0, 1, 0, Number.POSITIVE_INFINITY, 0);

/** What the crank angle alone decides in one cycle: where the piston stands and how far the burn is. */
export class CrankAngle {
	private readonly crank: number;
	private readonly rod: number;
	private readonly clearance: number;
	private readonly piston: number;
	private readonly start: number;
	private readonly duration: number;
	private readonly power: number;
	private lit = false;
	/** Motored pressure x V^1.3, once it burns. */
	private motored = 0;

	constructor({ bore, stroke, rod, ratio }: Cylinder, burn: Omit<ClosedCycle['burn'], 'heat'>) {
		const swept = sweptVolume(bore, stroke);
		this.crank = stroke / 2;
		this.rod = rod;
		this.clearance = swept / (ratio - 1);
		this.piston = swept / stroke;
		this.start = burn.start;
		this.duration = burn.duration;
		this.power = burn.power ?? usualPower;
	}

	/** From here on the charge burns: pressure above the motored one stirs the gas. Pa absolute, m3. */
	light(pressure: number, volume: number): void {
		this.lit = true;
		this.motored = pressure * volume ** motoredExponent;
	}

	/** Writes what an angle brings, deg from top dead center. Volume and slope as of `pistonDrop`, with one sine and cosine. */
	place(angle: number, into: Float64Array): void {
		const across = this.crank * Math.sin(angle * radians);
		const along = this.crank * Math.cos(angle * radians);
		const up = Math.sqrt(this.rod * this.rod - across * across);
		const volume = this.clearance + this.piston * (this.crank - along + (across * across) / (this.rod + up));
		const logVolume = Math.log(volume);
		into[0] = volume;
		into[1] = this.piston * radians * across * (1 + along / up);
		into[5] = volumeShare(logVolume);
		if (!this.lit) return;
		burnInto((angle - this.start) / this.duration, this.power, into, 2);
		into[3] = into[3]! / this.duration;
		into[4] = this.motored * Math.exp(-motoredExponent * logVolume);
	}
}
