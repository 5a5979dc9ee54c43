// How much one job may hold. The schemas check it in files; the commands refuse what would go past it.

export const limits = {
  traysPerJob: 20,
  shotsPerSlot: 200,
  unsortedShotsPerTray: 2000,
  pullsPerJob: 5000,
  correctionsPerPull: 50,
  instrumentsPerJob: 40,
  depositsPerReading: 24,
  shotsInWriteUp: 60,
} as const
