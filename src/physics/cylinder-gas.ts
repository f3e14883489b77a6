import type { Charge } from './charge.ts';
import { enthalpyAt, heatAt } from './gas.ts';
import { type Cylinder, cylinderVolume, pistonDrop, pistonSlope, sweptVolume } from './slider-crank.ts';
import { burnRate, unburntAt, usualPower } from './wiebe.ts';
import { boreShare, burningShare, gasShare, pistonShare } from './woschni.ts';

/** The valves-shut part of one cylinder's cycle: what it starts from, what burns, what the walls take. */
export interface ClosedCycle {
	readonly cylinder: Cylinder;
	/** rpm, 100 to 20000. */
	readonly speed: number;
	/** Crank angles, deg from top dead centre, where the valves are shut (before it) and where one opens (after it). */
	readonly shut: number;
	readonly opens: number;
	/** Gas at `shut`: Pa absolute and K. */
	readonly pressure: number;
	readonly temperature: number;
	readonly charge: Charge;
	/** Wiebe burn: start in deg from top dead centre, whole duration in deg, heat in J (0: turned without firing), its power. */
	readonly burn: {
		readonly start: number;
		readonly duration: number;
		readonly heat: number;
		readonly power?: number | undefined;
	};
	/** Walls: K, and a film coefficient in W/m2K (0 to 10000; 0 loses nothing) or Woschni's. */
	readonly walls: { readonly temperature: number; readonly film: number | 'woschni' };
}

/** Exponent of the motored pressure in Woschni's gas speed: usual for a petrol engine turned without firing. */
const motoredExponent = 1.3;

/** What a step carries forward, in this order: pressure Pa, unburnt gas K, its core K, work J, heat into the walls J. */
const states = 5;

/** What an angle brings, in this order: volume m3, its slope m3/deg, share unburnt, share burnt per deg, motored pressure Pa. */
const figures = 5;

/**
 * The gas in one cylinder, moved on by steps of crank angle: two zones at one pressure, unburnt and burnt, each with its own
 * properties; the flame hands gas from the one to the other, with the heat that it sets free.
 *
 * First law of each zone, and both fill the volume. The walls take Woschni's heat by the mean temperature; the unburnt zone
 * pays for its share of the volume, the burnt one for the rest. The core of the unburnt zone is what the walls do not reach.
 * The numbers live in fixed places: a step makes no garbage, and what was compiled for a cycle of whole numbers serves for
 * one of others too. Source: Heywood, Internal Combustion Engine Fundamentals, section 9.2.
 */
export class CylinderGas {
	/** deg from top dead centre. */
	angle: number;
	readonly #bore: number;
	readonly #stroke: number;
	readonly #rod: number;
	readonly #charge: Charge;
	readonly #start: number;
	readonly #duration: number;
	readonly #heat: number;
	readonly #power: number;
	readonly #wall: number;
	readonly #film: number;
	readonly #woschni: boolean;
	readonly #clearance: number;
	readonly #piston: number;
	readonly #massTimesR: number;
	readonly #mass: number;
	readonly #pistonSpeed: number;
	readonly #burningSpeed: number;
	readonly #degPerSecond: number;
	/** Motored pressure x V^1.3; until the spark nothing burns above it. */
	#motored = Number.POSITIVE_INFINITY;
	readonly #now = new Float64Array(states);
	readonly #trial = new Float64Array(states);
	/** Slopes per deg at the step's start, twice in its middle, at its end. */
	readonly #first = new Float64Array(states);
	readonly #second = new Float64Array(states);
	readonly #third = new Float64Array(states);
	readonly #fourth = new Float64Array(states);
	readonly #middle = new Float64Array(figures);
	readonly #end = new Float64Array(figures);

	constructor(cycle: ClosedCycle) {
		const { bore, stroke, rod, ratio } = cycle.cylinder;
		const { burn, walls } = cycle;
		const swept = sweptVolume(bore, stroke);
		this.angle = cycle.shut;
		this.#bore = bore;
		this.#stroke = stroke;
		this.#rod = rod;
		this.#charge = cycle.charge;
		this.#start = burn.start;
		this.#duration = burn.duration;
		this.#heat = burn.heat;
		this.#power = burn.power ?? usualPower;
		this.#wall = walls.temperature;
		this.#woschni = walls.film === 'woschni';
		this.#clearance = swept / (ratio - 1);
		this.#piston = swept / stroke;
		this.#massTimesR = (cycle.pressure * cylinderVolume(cycle.cylinder, cycle.shut)) / cycle.temperature;
		this.#mass = this.#massTimesR / cycle.charge.unburnt.constant;
		this.#film = walls.film === 'woschni' ? boreShare(bore) : walls.film;
		this.#pistonSpeed = (pistonShare * 2 * stroke * cycle.speed) / 60;
		this.#burningSpeed = (burningShare * swept) / this.#massTimesR;
		this.#degPerSecond = 6 * cycle.speed;
		this.#now[0] = cycle.pressure;
		this.#now[1] = cycle.temperature;
		this.#now[2] = cycle.temperature;
		this.#settle();
	}

	/** Pa absolute. */
	get pressure(): number {
		return this.#now[0]!;
	}

	/** Pa/deg. */
	get rise(): number {
		return this.#first[0]!;
	}

	/** K, of the unburnt zone as a whole. */
	get unburnt(): number {
		return this.#now[1]!;
	}

	/** K, of the unburnt zone's core, compressed without loss. */
	get endGas(): number {
		return this.#now[2]!;
	}

	/** J on the piston so far. */
	get work(): number {
		return this.#now[3]!;
	}

	/** J into the walls so far. */
	get wallHeat(): number {
		return this.#now[4]!;
	}

	/** From here on the charge burns: pressure above the motored one stirs the gas. */
	light(): void {
		this.#motored = this.pressure * this.#end[0]! ** motoredExponent;
		this.#settle();
	}

	/** One step of Runge and Kutta, fourth order, to another angle. */
	advance(to: number): void {
		const h = to - this.angle;
		this.#place(to - h / 2, this.#middle);
		this.#place(to, this.#end);
		this.#rates(this.#middle, this.#ahead(this.#first, h / 2), this.#second);
		this.#rates(this.#middle, this.#ahead(this.#second, h / 2), this.#third);
		this.#rates(this.#end, this.#ahead(this.#third, h), this.#fourth);
		for (let j = 0; j < states; j++) {
			const sum = this.#first[j]! + 2 * this.#second[j]! + 2 * this.#third[j]! + this.#fourth[j]!;
			this.#now[j] = this.#now[j]! + (h / 6) * sum;
		}
		this.angle = to;
		this.#rates(this.#end, this.#now, this.#first);
	}

	/** Works out the slopes where the gas stands now. */
	#settle(): void {
		this.#place(this.angle, this.#end);
		this.#rates(this.#end, this.#now, this.#first);
	}

	#ahead(slopes: Float64Array, h: number): Float64Array {
		for (let j = 0; j < states; j++) this.#trial[j] = this.#now[j]! + h * slopes[j]!;
		return this.#trial;
	}

	#place(angle: number, into: Float64Array): void {
		const volume = this.#clearance + this.#piston * pistonDrop(this.#stroke, this.#rod, angle);
		into[0] = volume;
		into[1] = this.#piston * pistonSlope(this.#stroke, this.#rod, angle);
		const y = (angle - this.#start) / this.#duration;
		into[2] = unburntAt(y, this.#power);
		into[3] = burnRate(y, into[2]!, this.#power) / this.#duration;
		into[4] = this.#woschni ? this.#motored * Math.exp(-motoredExponent * Math.log(volume)) : 0;
	}

	#rates(place: Float64Array, state: Float64Array, into: Float64Array): void {
		const { unburnt, burnt } = this.#charge;
		const volume = place[0]!;
		const left = place[2]!;
		const burning = place[3]! * this.#mass;
		const pressure = state[0]!;
		const kelvin = state[1]!;
		const mean = (pressure * volume) / this.#massTimesR;
		const flux = (this.#filmAt(pressure, mean, place[4]!) * this.#area(volume)) / this.#degPerSecond;
		const loss = flux * (mean - this.#wall);
		const coreHeat = heatAt(unburnt, state[2]!);
		const heat = heatAt(unburnt, kelvin);
		const share = unburnt.constant / heat;
		// Unburnt gas fills it all until something is burnt.
		const own = left < 1 ? Math.min(1, (left * kelvin) / mean) * volume : volume;
		const ownLoss = left < 1 ? flux * (own / volume) * (kelvin - this.#wall) : loss;
		let gain = -pressure * place[1]! - share * ownLoss;
		let give = own * (1 - share);
		if (left < 1) {
			const other = volume - own;
			const hot = (pressure * other) / (this.#mass * (1 - left) * burnt.constant);
			const hotShare = burnt.constant / heatAt(burnt, hot);
			const freed = this.#heat / this.#mass + enthalpyAt(unburnt, kelvin) - enthalpyAt(burnt, hot);
			gain += burning * (burnt.constant * hot - unburnt.constant * kelvin + hotShare * freed);
			gain -= hotShare * (loss - ownLoss);
			give += other * (1 - hotShare);
		}
		const rise = gain / give;
		const squeeze = rise / pressure;
		// What the walls take of the unburnt zone, over the energy of its p V: 0 once there is next to none of it.
		const chill = (left < 1 ? (flux / volume) * (kelvin - this.#wall) : loss / volume) / pressure;
		into[0] = rise;
		into[1] = share * kelvin * (squeeze - chill);
		into[2] = (unburnt.constant / coreHeat) * state[2]! * squeeze;
		into[3] = pressure * place[1]!;
		into[4] = loss;
	}

	/** Film coefficient, W/m2K. */
	#filmAt(pressure: number, temperature: number, motored: number): number {
		if (!this.#woschni) return this.#film;
		const gasSpeed = this.#pistonSpeed + this.#burningSpeed * Math.max(0, pressure - motored);
		return this.#film * gasShare(pressure, temperature, gasSpeed);
	}

	/** Wall, m2: head, piston top, and as much liner as the volume would fill at the bore. */
	#area(volume: number): number {
		return (Math.PI / 2) * this.#bore * this.#bore + (4 * volume) / this.#bore;
	}
}
