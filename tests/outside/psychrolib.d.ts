/** The part of the library that the checks call; it comes without types. */
declare module 'psychrolib' {
	interface Psychrolib {
		readonly SI: number;
		SetUnitSystem(system: number): void;
		GetSatVapPres(celsius: number): number;
		GetHumRatioFromRelHum(celsius: number, relativeHumidity: number, pressure: number): number;
		GetMoistAirDensity(celsius: number, humidityRatio: number, pressure: number): number;
		GetStandardAtmPressure(altitude: number): number;
	}
	const psychrolib: Psychrolib;
	export default psychrolib;
}
