import {
  decodeOpenProfileClock,
  decodeOpenProfileInfo,
  openProfileDecoder,
} from '../../../decode/openProfile.ts';
import { PacketError } from '../../../decode/packet.ts';
import { KIND_TEXTS } from '../../radioTexts.ts';
import { BATTERY_SERVICE, type Driver } from './driver.ts';

/** UUIDs of the open profile; they stand in firmware-notes/README.md too. */
export const OPEN_PROFILE = {
  service: 'ac3c0001b1a34ef3a73ad8143168e58a',
  data: 'ac3c0002b1a34ef3a73ad8143168e58a',
  info: 'ac3c0003b1a34ef3a73ad8143168e58a',
  control: 'ac3c0004b1a34ef3a73ad8143168e58a',
  clock: 'ac3c0005b1a34ef3a73ad8143168e58a',
} as const;

const START = [0x01, 0x01];
const BLINK = [0x03, 0x06];

export const openProfileDriver: Driver = {
  kind: 'openProfile',
  label: KIND_TEXTS.openProfile,
  // 7.5 to 15 ms; at 104 Hz none of these beats with the packets.
  interval: { min: 6, max: 12 },
  services: [OPEN_PROFILE.service, BATTERY_SERVICE],
  matches: ({ serviceUuids }) => serviceUuids.includes(OPEN_PROFILE.service),
  async prepare(gatt, onBytes) {
    const info = await gatt.read(OPEN_PROFILE.info);
    const { rateHz } = decodeOpenProfileInfo(info);
    await gatt.subscribe(OPEN_PROFILE.data, onBytes);
    await gatt.write(OPEN_PROFILE.control, START);
    return { rateHz, info };
  },
  identify: (gatt) => gatt.write(OPEN_PROFILE.control, BLINK),
  // Boards built by an earlier description of the profile have none.
  askClock: async (gatt) =>
    gatt.has(OPEN_PROFILE.clock)
      ? decodeOpenProfileClock(await gatt.read(OPEN_PROFILE.clock))
      : null,
  decoder({ info }) {
    if (!info) throw new PacketError('length', 'An open-profile sensor without info');
    return openProfileDecoder(decodeOpenProfileInfo(info)) as ReturnType<Driver['decoder']>;
  },
};
