import type { ClosedCycle } from './closed-cycle.ts';
import { enthalpyInto, type Gas, gasFigures, heatInto } from './gas.ts';
import { cylinderVolume, sweptVolume } from './slider-crank.ts';
import { burningShare, cylinderShare, pistonShare, speedShare } from './woschni.ts';

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
	private readonly unburnt: Gas;
	private readonly burnt: Gas;
	private readonly unburntR: number;
	private readonly burntR: number;
	private readonly freed: number;
	private readonly wall: number;
	private readonly woschni: boolean;
	/** Film coefficient, or what of it stays the same, with wall m2 and m2/m3 of volume, per deg/s. */
	private readonly ends: number;
	private readonly liner: number;
	private readonly massTimesR: number;
	private readonly mass: number;
	private readonly pistonSpeed: number;
	private readonly pistonSpeedShare: number;
	private readonly burningSpeed: number;
	/** Where a gas is looked up. */
	private readonly at = new Float64Array(gasFigures);

	constructor(cycle: ClosedCycle) {
		const { bore, stroke } = cycle.cylinder;
		const { walls, charge } = cycle;
		this.unburnt = charge.unburnt;
		this.burnt = charge.burnt;
		this.unburntR = charge.unburnt.constant;
		this.burntR = charge.burnt.constant;
		this.wall = walls.temperature;
		this.massTimesR = (cycle.pressure * cylinderVolume(cycle.cylinder, cycle.shut)) / cycle.temperature;
		this.mass = this.massTimesR / this.unburntR;
		this.freed = cycle.burn.heat / this.mass;
		this.woschni = walls.film === 'woschni';
		const film = walls.film === 'woschni' ? cylinderShare(bore, this.massTimesR) : walls.film;
		// Head, piston top, and as much liner as the volume would fill at the bore.
		this.ends = (film * (Math.PI / 2) * bore * bore) / (6 * cycle.speed);
		this.liner = (film * 4) / bore / (6 * cycle.speed);
		this.pistonSpeed = (pistonShare * 2 * stroke * cycle.speed) / 60;
		this.pistonSpeedShare = speedShare(this.pistonSpeed);
		this.burningSpeed = (burningShare * sweptVolume(bore, stroke)) / this.massTimesR;
	}

	/**
	 * Writes how each state changes per deg, `ahead` deg along these slopes from where it is `now`, where the crank angle
	 * (`CrankAngle.place`) has brought these figures.
	 */
	rates(place: Float64Array, now: Float64Array, slopes: Float64Array, ahead: number, into: Float64Array): void {
		const { unburnt, at, unburntR } = this;
		const pressure = now[0]! + ahead * slopes[0]!;
		const kelvin = now[1]! + ahead * slopes[1]!;
		const core = now[2]! + ahead * slopes[2]!;
		const volume = place[0]!;
		const left = place[2]!;
		const mean = (pressure * volume) / this.massTimesR;
		// Heat into the walls per deg and K.
		let flux = this.ends + this.liner * volume;
		if (this.woschni) {
			const over = pressure - place[4]!;
			const share = over > 0 ? speedShare(this.pistonSpeed + this.burningSpeed * over) : this.pistonSpeedShare;
			flux *= place[5]! * Math.sqrt(Math.sqrt(pressure)) * share;
		}
		const loss = flux * (mean - this.wall);
		at[0] = core;
		heatInto(unburnt, at);
		const coreHeat = at[1]!;
		at[0] = kelvin;
		heatInto(unburnt, at);
		const share = unburntR / at[1]!;
		// Unburnt gas fills it all until something is burnt. Of what the walls take, its part, per m3.
		let own = volume;
		let chill = loss / volume;
		let gain = -pressure * place[1]!;
		let give = 0;
		if (left < 1) {
			enthalpyInto(unburnt, at);
			const enthalpy = at[2]!;
			const { burnt, burntR } = this;
			own = left * kelvin < mean ? ((left * kelvin) / mean) * volume : volume;
			chill = (flux / volume) * (kelvin - this.wall);
			const other = volume - own;
			const hot = (pressure * other) / (this.mass * (1 - left) * burntR);
			at[0] = hot;
			heatInto(burnt, at);
			enthalpyInto(burnt, at);
			const hotShare = burntR / at[1]!;
			const freed = this.freed + enthalpy - at[2]!;
			gain += place[3]! * this.mass * (burntR * hot - unburntR * kelvin + hotShare * freed);
			gain -= hotShare * (loss - chill * own);
			give = other * (1 - hotShare);
		}
		const rise = (gain - share * chill * own) / (give + own * (1 - share));
		const squeeze = rise / pressure;
		into[0] = rise;
		// What the walls take of the unburnt zone, over the energy of its p V: 0 once there is next to none of it.
		into[1] = share * kelvin * (squeeze - chill / pressure);
		into[2] = (unburntR / coreHeat) * core * squeeze;
		into[3] = pressure * place[1]!;
		into[4] = loss;
	}
}
