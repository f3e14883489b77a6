import { type GammaFit, gammaAt } from './gas.ts';
import { type Cylinder, cylinderVolume, pistonDrop, pistonSlope, sweptVolume } from './slider-crank.ts';
import { burnRate } from './wiebe.ts';
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
	readonly gamma: GammaFit;
	/** Wiebe burn: start in deg from top dead centre, whole duration in deg, heat in J (0: turned without firing). */
	readonly burn: { readonly start: number; readonly duration: number; readonly heat: number };
	/** Walls: K, and a film coefficient in W/m2K (0 to 10000; 0 loses nothing) or Woschni's. */
	readonly walls: { readonly temperature: number; readonly film: number | 'woschni' };
}

/** Exponent of the motored pressure in Woschni's gas speed: usual for a petrol engine turned without firing. */
const motoredExponent = 1.3;

/** What a step carries forward, in this order: pressure Pa, end gas K, work J, heat into the walls J. */
const states = 4;

/** What an angle brings, in this order: volume m3, its slope m3/deg, heat J/deg, motored pressure Pa. */
const figures = 4;

/**
 * The gas in one cylinder, moved on by steps of crank angle.
 *
 * dp = ((gamma - 1)(heat in - heat to the walls) - gamma p dV) / V: the first law for an ideal gas, true whether or not
 * gamma moves with temperature. The numbers live in fixed places: a step makes no garbage, and what was compiled for a
 * cycle of whole numbers serves for one of others too.
 */
export class CylinderGas {
	/** deg from top dead centre. */
	angle: number;
	readonly #bore: number;
	readonly #stroke: number;
	readonly #rod: number;
	readonly #gamma: GammaFit;
	readonly #start: number;
	readonly #duration: number;
	readonly #heat: number;
	readonly #wall: number;
	readonly #film: number;
	readonly #woschni: boolean;
	readonly #clearance: number;
	readonly #piston: number;
	readonly #massTimesR: number;
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
		this.#gamma = cycle.gamma;
		this.#start = burn.start;
		this.#duration = burn.duration;
		this.#heat = burn.heat;
		this.#wall = walls.temperature;
		this.#woschni = walls.film === 'woschni';
		this.#clearance = swept / (ratio - 1);
		this.#piston = swept / stroke;
		this.#massTimesR = (cycle.pressure * cylinderVolume(cycle.cylinder, cycle.shut)) / cycle.temperature;
		this.#film = walls.film === 'woschni' ? boreShare(bore) : walls.film;
		this.#pistonSpeed = (pistonShare * 2 * stroke * cycle.speed) / 60;
		this.#burningSpeed = (burningShare * swept) / this.#massTimesR;
		this.#degPerSecond = 6 * cycle.speed;
		this.#now[0] = cycle.pressure;
		this.#now[1] = cycle.temperature;
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

	/** K. */
	get endGas(): number {
		return this.#now[1]!;
	}

	/** J on the piston so far. */
	get work(): number {
		return this.#now[2]!;
	}

	/** J into the walls so far. */
	get wallHeat(): number {
		return this.#now[3]!;
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
		into[2] = (this.#heat / this.#duration) * burnRate((angle - this.#start) / this.#duration);
		into[3] = this.#woschni ? this.#motored * Math.exp(-motoredExponent * Math.log(volume)) : 0;
	}

	#rates(place: Float64Array, state: Float64Array, into: Float64Array): void {
		const volume = place[0]!;
		const slope = place[1]!;
		const pressure = state[0]!;
		const endGas = state[1]!;
		const temperature = (pressure * volume) / this.#massTimesR;
		const gamma = gammaAt(this.#gamma, temperature);
		const loss =
			(this.#filmAt(pressure, temperature, place[3]!) * this.#area(volume) * (temperature - this.#wall)) /
			this.#degPerSecond;
		const rise = ((gamma - 1) * (place[2]! - loss) - gamma * pressure * slope) / volume;
		into[0] = rise;
		into[1] = ((1 - 1 / gammaAt(this.#gamma, endGas)) * endGas * rise) / pressure;
		into[2] = pressure * slope;
		into[3] = loss;
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
