// A child that imports a folder of photos again and again through the services, until it is killed: a line before each
// import, and one after it was acknowledged.
import { writeSync } from 'node:fs'
import { readdir } from 'node:fs/promises'
import { join } from 'node:path'
import { createServices } from '../../../../electron/services/services.ts'
import { jobCalled, open } from '../example.ts'

const [folder = '', photos = '', start = '0'] = process.argv.slice(2)
const catalogue = await open(folder)
if (catalogue.readOnly !== null) {
  writeSync(1, `held ${catalogue.readOnly}\n`)
  process.exit(1)
}
const log = { error: (id: string) => void writeSync(2, `unexpected fault ${id}\n`), info: () => undefined }
const services = createServices(catalogue, { host: 'memory', appVersion: '0.0.0', log, demoFolder: '' })
const names = (await readdir(photos)).toSorted()
writeSync(1, 'ready\n')
for (let number = Number(start); ; number += 1) {
  const id = `job-${number}`
  const job = await catalogue.save(jobCalled(id, 'importing'))
  writeSync(1, `begin ${id}\n`)
  const refs = names.map(name => services.files.inPlace(join(photos, name), name))
  const taskId = await services.startIntake({ jobId: id, trayId: job.trays[0]?.id ?? '', refs })
  for await (const event of services.tasks.watch(taskId)) {
    if (event.kind === 'failed') writeSync(2, `import failed: ${event.fault.what}\n`)
    if (event.kind === 'finished') writeSync(1, `done ${id}\n`)
  }
}
