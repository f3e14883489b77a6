import type { Charge } from './charge.ts';
import type { ClosedCycle } from './closed-cycle.ts';
import { enthalpyAt, heatAt } from './gas.ts';
import { cylinderVolume, sweptVolume } from './slider-crank.ts';
import { boreShare, burningShare, gasShare, pistonShare } from './woschni.ts';

/** What a step carries forward, in this order: pressure Pa, unburnt gas K, its core K, work J, heat into the walls J. */
export const zoneStates = 5;

/**
 * How the gas in one cylinder changes with crank angle: two zones at one pressure, unburnt and burnt, each with its own
 * properties; the flame hands gas from the one to the other, with the heat that it sets free.
 *
 * First law of each zone, and both fill the volume. The walls take Woschni's heat by the mean temperature; the unburnt zone
 * pays for its share of the volume, the burnt one for the rest. The core of the unburnt zone is what the walls do not reach.
 * Source: Heywood, Internal Combustion Engine Fundamentals, section 9.2.
 */
export class TwoZones {
	private readonly bore: number;
	private readonly charge: Charge;
	private readonly heat: number;
	private readonly wall: number;
	private readonly film: number;
	private readonly woschni: boolean;
	private readonly massTimesR: number;
	private readonly mass: number;
	private readonly pistonSpeed: number;
	private readonly burningSpeed: number;
	private readonly degPerSecond: number;

	constructor(cycle: ClosedCycle) {
		const { bore, stroke } = cycle.cylinder;
		const { walls } = cycle;
		this.bore = bore;
		this.charge = cycle.charge;
		this.heat = cycle.burn.heat;
		this.wall = walls.temperature;
		this.woschni = walls.film === 'woschni';
		this.massTimesR = (cycle.pressure * cylinderVolume(cycle.cylinder, cycle.shut)) / cycle.temperature;
		this.mass = this.massTimesR / cycle.charge.unburnt.constant;
		this.film = walls.film === 'woschni' ? boreShare(bore) : walls.film;
		this.pistonSpeed = (pistonShare * 2 * stroke * cycle.speed) / 60;
		this.burningSpeed = (burningShare * sweptVolume(bore, stroke)) / this.massTimesR;
		this.degPerSecond = 6 * cycle.speed;
	}

	/** Writes how each state changes per deg where the crank angle (`CrankAngle.place`) has brought these figures. */
	rates(place: Float64Array, state: Float64Array, into: Float64Array): void {
		const { unburnt, burnt } = this.charge;
		const volume = place[0]!;
		const left = place[2]!;
		const burning = place[3]! * this.mass;
		const pressure = state[0]!;
		const kelvin = state[1]!;
		const mean = (pressure * volume) / this.massTimesR;
		const flux = (this.filmAt(pressure, mean, place[4]!) * this.area(volume)) / this.degPerSecond;
		const loss = flux * (mean - this.wall);
		const coreHeat = heatAt(unburnt, state[2]!);
		const heat = heatAt(unburnt, kelvin);
		const share = unburnt.constant / heat;
		// Unburnt gas fills it all until something is burnt.
		const own = left < 1 ? Math.min(1, (left * kelvin) / mean) * volume : volume;
		const ownLoss = left < 1 ? flux * (own / volume) * (kelvin - this.wall) : loss;
		let gain = -pressure * place[1]! - share * ownLoss;
		let give = own * (1 - share);
		if (left < 1) {
			const other = volume - own;
			const hot = (pressure * other) / (this.mass * (1 - left) * burnt.constant);
			const hotShare = burnt.constant / heatAt(burnt, hot);
			const freed = this.heat / this.mass + enthalpyAt(unburnt, kelvin) - enthalpyAt(burnt, hot);
			gain += burning * (burnt.constant * hot - unburnt.constant * kelvin + hotShare * freed);
			gain -= hotShare * (loss - ownLoss);
			give += other * (1 - hotShare);
		}
		const rise = gain / give;
		const squeeze = rise / pressure;
		// What the walls take of the unburnt zone, over the energy of its p V: 0 once there is next to none of it.
		const chill = (left < 1 ? (flux / volume) * (kelvin - this.wall) : loss / volume) / pressure;
		into[0] = rise;
		into[1] = share * kelvin * (squeeze - chill);
		into[2] = (unburnt.constant / coreHeat) * state[2]! * squeeze;
		into[3] = pressure * place[1]!;
		into[4] = loss;
	}

	/** Film coefficient, W/m2K. */
	private filmAt(pressure: number, temperature: number, motored: number): number {
		if (!this.woschni) return this.film;
		const gasSpeed = this.pistonSpeed + this.burningSpeed * Math.max(0, pressure - motored);
		return this.film * gasShare(pressure, temperature, gasSpeed);
	}

	/** Wall, m2: head, piston top, and as much liner as the volume would fill at the bore. */
	private area(volume: number): number {
		return (Math.PI / 2) * this.bore * this.bore + (4 * volume) / this.bore;
	}
}
