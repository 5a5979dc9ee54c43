// The version of the job document's shape. No zod here, so that the page can make a new job.

export const currentSchemaVersion = 2
