/** What a logged injector pulse is: with the dead time in it or not, the whole of a cycle or one of two halves. */
export interface PulseForm {
	readonly dead: boolean;
	readonly perCycle: 1 | 2;
}

/** How most controllers log it; what it is taken for where the idle does not say. */
export const usualPulse: PulseForm = { dead: true, perCycle: 1 };

/** s in a cycle that an injector is driven, and that it is open, of a pulse as logged. */
export const drivenTime = ({ dead, perCycle }: PulseForm, pulse: number, deadTime: number): number =>
	perCycle * (dead ? pulse : pulse + deadTime);
export const openTime = ({ dead, perCycle }: PulseForm, pulse: number, deadTime: number): number =>
	Math.max(0, perCycle * (dead ? pulse - deadTime : pulse));
