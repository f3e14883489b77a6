import type { ClosedCycle } from './closed-cycle.ts';
import { angleFigures, CrankAngle } from './crank-angle.ts';
import { TwoZones, zoneStates } from './two-zones.ts';

/**
 * The gas in one cylinder, moved on by steps of crank angle. Its numbers live in fixed places: a step makes no garbage, and what
 * was compiled for a cycle of whole numbers serves for one of others too.
 */
export class CylinderGas {
	/** deg from top dead center. */
	angle: number;
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

	constructor(cycle: ClosedCycle) {
		this.angle = cycle.shut;
		this.crank = new CrankAngle(cycle.cylinder, cycle.burn);
		this.zones = new TwoZones(cycle);
		this.now[0] = cycle.pressure;
		this.now[1] = cycle.temperature;
		this.now[2] = cycle.temperature;
		this.settle();
	}

	/** Pa absolute. */
	get pressure(): number {
		return this.now[0]!;
	}

	/** Pa/deg. */
	get rise(): number {
		return this.first[0]!;
	}

	/** K, of the unburnt zone as a whole. */
	get unburnt(): number {
		return this.now[1]!;
	}

	/** K, of the unburnt zone's core, compressed without loss. */
	get endGas(): number {
		return this.now[2]!;
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
		this.crank.light(this.pressure, this.end[0]!);
		this.settle();
	}

	/** One step of Runge and Kutta, fourth order, to another angle. */
	advance(to: number): void {
		const h = to - this.angle;
		this.crank.place(to - h / 2, this.middle);
		this.crank.place(to, this.end);
		this.zones.rates(this.middle, this.now, this.first, h / 2, this.second);
		this.zones.rates(this.middle, this.now, this.second, h / 2, this.third);
		this.zones.rates(this.end, this.now, this.third, h, this.fourth);
		for (let j = 0; j < zoneStates; j++) {
			const sum = this.first[j]! + 2 * this.second[j]! + 2 * this.third[j]! + this.fourth[j]!;
			this.now[j] = this.now[j]! + (h / 6) * sum;
		}
		this.angle = to;
		this.zones.rates(this.end, this.now, this.fourth, 0, this.first);
	}

	/** Works out the slopes where the gas stands now. */
	private settle(): void {
		this.crank.place(this.angle, this.end);
		this.zones.rates(this.end, this.now, this.fourth, 0, this.first);
	}
}
