import type { ClosedCycle } from './closed-cycle.ts';
import { angleFigures, CrankAngle } from './crank-angle.ts';
import { TwoZones, zoneStates } from './two-zones.ts';

/**
 * The gas in one cylinder, moved on by steps of crank angle. Its numbers live in fixed places: a step makes no garbage, and what
 * was compiled for a cycle of whole numbers serves for one of others too.
 */
export class CylinderGas {
	/** How many places of the lists below are noted. */
	places = 0;
	/** deg from top dead center. */
	readonly angle: Float64Array;
	/** Pa absolute. */
	readonly pressure: Float64Array;
	/** K, of the unburnt zone's core, compressed without loss. */
	readonly endGas: Float64Array;
	private readonly peak = new Float64Array(2);
	private readonly crank: CrankAngle;
	private readonly zones: TwoZones;
	private readonly now = new Float64Array(zoneStates);
	/** Slopes per deg at the step's start, twice in its middle, at its end. */
	private readonly first = new Float64Array(zoneStates);
	private readonly second = new Float64Array(zoneStates);
	private readonly third = new Float64Array(zoneStates);
	private readonly fourth = new Float64Array(zoneStates);
	private readonly middle = angleFigures();
	private readonly end = angleFigures();

	/** `places`: how many will be noted at most. */
	constructor(cycle: ClosedCycle, places: number) {
		this.angle = new Float64Array(places);
		this.pressure = new Float64Array(places);
		this.endGas = new Float64Array(places);
		this.crank = new CrankAngle(cycle.cylinder, cycle.burn);
		this.zones = new TwoZones(cycle);
		this.now[0] = cycle.pressure;
		this.now[1] = cycle.temperature;
		this.now[2] = cycle.temperature;
		this.settle(cycle.shut);
		this.note(cycle.shut);
		this.peak[0] = cycle.pressure;
		this.peak[1] = cycle.shut;
	}

	/** The highest pressure so far, Pa absolute: at a place, or between two where the rise turns into a fall. */
	get peakPressure(): number {
		return this.peak[0]!;
	}

	/** Where that was, deg from top dead center. */
	get peakAngle(): number {
		return this.peak[1]!;
	}

	/** K, of the unburnt zone as a whole. */
	get unburnt(): number {
		return this.now[1]!;
	}

	/** J on the piston so far. */
	get work(): number {
		return this.now[3]!;
	}

	/** J into the walls so far. */
	get wallHeat(): number {
		return this.now[4]!;
	}

	/** From here on the charge burns. */
	light(): void {
		this.crank.light(this.now[0]!, this.end[0]!);
		this.settle(this.angle[this.places - 1]!);
	}

	/** So many equal steps from an angle to another; none more where over `enough` places are noted and the pressure falls. */
	follow(from: number, to: number, steps: number, enough: number): void {
		for (let n = 1; n <= steps; n++) {
			if (this.places > enough && this.first[0]! < 0) return;
			this.advance(from + ((to - from) * n) / steps);
		}
	}

	/** One step of Runge and Kutta, fourth order. */
	private advance(to: number): void {
		const { crank, zones, middle, end, now, first, second, third, fourth } = this;
		const h = to - this.angle[this.places - 1]!;
		crank.place(to - h / 2, middle);
		crank.place(to, end);
		zones.rates(middle, now, first, h / 2, second);
		zones.rates(middle, now, second, h / 2, third);
		zones.rates(end, now, third, h, fourth);
		const before = now[0]!;
		const rise = first[0]!;
		const sixth = h / 6;
		now[0] = before + sixth * (rise + 2 * second[0]! + 2 * third[0]! + fourth[0]!);
		now[1] = now[1]! + sixth * (first[1]! + 2 * second[1]! + 2 * third[1]! + fourth[1]!);
		now[2] = now[2]! + sixth * (first[2]! + 2 * second[2]! + 2 * third[2]! + fourth[2]!);
		now[3] = now[3]! + sixth * (first[3]! + 2 * second[3]! + 2 * third[3]! + fourth[3]!);
		now[4] = now[4]! + sixth * (first[4]! + 2 * second[4]! + 2 * third[4]! + fourth[4]!);
		zones.rates(end, now, fourth, 0, first);
		this.note(to);
		if (rise > 0 && first[0]! < 0) this.turn(before, rise, h);
		else if (now[0]! > this.peak[0]!) {
			this.peak[0] = now[0]!;
			this.peak[1] = to;
		}
	}

	/** Where the rise has turned into a fall: the highest point of the cubic through both ends of the step. */
	private turn(before: number, rise: number, h: number): void {
		const after = this.now[0]!;
		const fall = this.first[0]!;
		const t = rise / (rise - fall);
		const u = 1 - t;
		const top = u * u * (before * (1 + 2 * t) + rise * h * t) + t * t * (after * (1 + 2 * u) - fall * h * u);
		if (top > this.peak[0]!) {
			this.peak[0] = top;
			this.peak[1] = this.angle[this.places - 1]! - u * h;
		}
	}

	private note(angle: number): void {
		this.angle[this.places] = angle;
		this.pressure[this.places] = this.now[0]!;
		this.endGas[this.places] = this.now[2]!;
		this.places++;
	}

	/** Works out the slopes where the gas stands now. */
	private settle(angle: number): void {
		this.crank.place(angle, this.end);
		this.zones.rates(this.end, this.now, this.fourth, 0, this.first);
	}
}
