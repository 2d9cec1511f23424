/** Whether the program's own keypad stands in for the system's keyboard: on touch, until the user asks for the other. */

let system = false;

/** True where fingers are the pointer and the system's keyboard was not asked for. */
export const isOwnKeypad = (): boolean => !system && matchMedia('(pointer: coarse)').matches;

export function setSystemKeyboard(wanted: boolean): void {
  system = wanted;
}

export const isSystemKeyboard = (): boolean => system;
