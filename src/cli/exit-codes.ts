// What the shell is told. 64 to 70 as in the usual sysexits list (common practice), 130 as shells tell
// of a command that was stopped by Ctrl-C.

export const exitCodes = { holds: 0, fails: 1, notKnown: 2, badInput: 64, ourFault: 70, stopped: 130 } as const;
