import http from 'node:http'

/** Chances of what becomes of one batch of entries. */
const CUT_BEFORE = 0.08
const REPLY_LOST = 0.12
const DOUBLED = 0.15
const WRONG_ANSWER = 0.05

/** Stands between browser and server. Batches of entries meet its faults once it has begun; everything else passes. */
export async function faultyWire({ port, upstream, random }) {
  let isFaulty = false
  const counts = { batches: 0, cutBefore: 0, repliesLost: 0, requestsDoubled: 0, wrongAnswers: 0 }

  const wire = http.createServer((request, response) => {
    const parts = []
    request.on('data', (part) => parts.push(part))
    request.on('end', () => {
      const body = Buffer.concat(parts)
      const forward = () => forwarded(request, body, upstream)
      const pass = () =>
        forward().then(
          (answer) => answered(response, answer),
          () => response.destroy(),
        )
      if (!isFaulty || request.method !== 'POST' || request.url !== '/api/events') return void pass()
      counts.batches += 1
      const fate = random.uniform()
      if (fate < CUT_BEFORE) {
        counts.cutBefore += 1
        response.destroy()
      } else if (fate < CUT_BEFORE + REPLY_LOST) {
        counts.repliesLost += 1
        void forward().then(
          () => response.destroy(),
          () => response.destroy(),
        )
      } else if (fate < CUT_BEFORE + REPLY_LOST + DOUBLED) {
        counts.requestsDoubled += 1
        void forward().catch(() => {})
        void pass()
      } else if (fate < CUT_BEFORE + REPLY_LOST + DOUBLED + WRONG_ANSWER) {
        counts.wrongAnswers += 1
        response.writeHead(502, { 'content-type': 'text/html' }).end('<h1>Bad gateway</h1>')
      } else void pass()
    })
  })
  await new Promise((resolve) => wire.listen(port, '127.0.0.1', resolve))
  return {
    address: `http://127.0.0.1:${port}`,
    begin: () => (isFaulty = true),
    end: () => (isFaulty = false),
    counts: () => counts,
    close: () => new Promise((resolve) => wire.close(resolve).closeAllConnections?.()),
  }
}

function forwarded(request, body, port) {
  return new Promise((resolve, reject) => {
    const passing = http.request(
      { port, host: '127.0.0.1', method: request.method, path: request.url, headers: request.headers, agent: false },
      (answer) => {
        const parts = []
        answer.on('data', (part) => parts.push(part))
        answer.on('end', () => resolve({ status: answer.statusCode, headers: answer.headers, body: Buffer.concat(parts) }))
        answer.on('error', reject)
      },
    )
    passing.on('error', reject)
    passing.end(body)
  })
}

function answered(response, { status, headers, body }) {
  response.writeHead(status, { ...headers, connection: 'close' })
  response.end(body)
}
