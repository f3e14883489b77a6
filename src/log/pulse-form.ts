/** What a logged injector pulse is: with the dead time in it or not, the whole of a cycle or one of two halves. */
export interface PulseForm {
	readonly dead: boolean;
	readonly perCycle: 1 | 2;
}

/** How most controllers log it; what it is taken for where the idle does not say. */
export const usualPulse: PulseForm = { dead: true, perCycle: 1 };

/** How long an injector is driven in a cycle, s, by a pulse as logged and its dead time, both in s. */
export const drivenTime = ({ dead, perCycle }: PulseForm, pulse: number, deadTime: number): number =>
	perCycle * (dead ? pulse : pulse + deadTime);
/** How long it is open in a cycle, s, never under 0. */
export const openTime = ({ dead, perCycle }: PulseForm, pulse: number, deadTime: number): number =>
	Math.max(0, perCycle * (dead ? pulse - deadTime : pulse));
