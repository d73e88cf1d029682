/** Whether a host name means, on every machine, that machine itself: of no use on a label. */
export function isOfThisMachineOnly(hostName: string): boolean {
  return /^(localhost|.+\.localhost|127(\.\d+){3}|\[::1\])$/i.test(hostName)
}
