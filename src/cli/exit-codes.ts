// What the shell is told. 64 to 70 as in the usual sysexits list (common practice).

export const exitCodes = { holds: 0, fails: 1, notKnown: 2, badInput: 64, ourFault: 70 } as const;
