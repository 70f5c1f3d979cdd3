/*
 * Packet of the Stillcatch open sensor profile, version 1. Plain C (C99) and C++; no allocation, no dependencies.
 * The layout stands in ../README.md. All numbers are little-endian whatever the processor is.
 * SPDX-License-Identifier: Apache-2.0
 */
#ifndef STILLCATCH_PACKET_H
#define STILLCATCH_PACKET_H

#include <stddef.h>
#include <stdint.h>
#include <string.h>

#define SC_VERSION 1u
#define SC_HEADER_BYTES 8u
#define SC_SAMPLE_BYTES 12u
#define SC_INFO_BYTES 12u
#define SC_CLOCK_BYTES 4u
/* 8 + 19 * 12 = 236 bytes: the most that an MTU of 247 carries (and 1 sample, 20 bytes, the least MTU). */
#define SC_MAX_SAMPLES 19u
#define SC_PACKET_BYTES(n) (SC_HEADER_BYTES + (size_t)(n) * SC_SAMPLE_BYTES)

#define SC_SERVICE_UUID "ac3c0001-b1a3-4ef3-a73a-d8143168e58a"
#define SC_DATA_UUID "ac3c0002-b1a3-4ef3-a73a-d8143168e58a"
#define SC_INFO_UUID "ac3c0003-b1a3-4ef3-a73a-d8143168e58a"
#define SC_CONTROL_UUID "ac3c0004-b1a3-4ef3-a73a-d8143168e58a"
#define SC_CLOCK_UUID "ac3c0005-b1a3-4ef3-a73a-d8143168e58a"

enum sc_role { SC_ROLE_ANY = 0, SC_ROLE_CHEST = 1, SC_ROLE_TRAIL_ARM = 2, SC_ROLE_CLUB = 3 };

/* First byte of a control write. */
enum sc_control {
  SC_CONTROL_RUN = 1,  /* u8: 1 start, 0 stop */
  SC_CONTROL_RATE = 2, /* u16: 0.01 Hz */
  SC_CONTROL_BLINK = 3 /* u8: how often */
};

/* One reading as the sensor gives it, sensor's own right-handed axes. */
typedef struct {
  int16_t acc[3];
  int16_t gyro[3];
} sc_sample;

/* Packet in the making. Start with sc_packet_init; the sequence runs on for as long as the device is powered. */
typedef struct {
  uint8_t bytes[SC_PACKET_BYTES(SC_MAX_SAMPLES)];
  uint8_t samples;
  uint8_t samples_per_packet;
  uint16_t sequence;
} sc_packet;

static inline void sc_put_u16(uint8_t *at, uint16_t v) {
  at[0] = (uint8_t)(v & 0xffu);
  at[1] = (uint8_t)(v >> 8);
}

static inline void sc_put_u32(uint8_t *at, uint32_t v) {
  sc_put_u16(at, (uint16_t)(v & 0xffffu));
  sc_put_u16(at + 2, (uint16_t)(v >> 16));
}

/* Samples in a packet that a link of this ATT MTU carries, 1 to SC_MAX_SAMPLES. */
static inline uint8_t sc_samples_for_mtu(uint16_t mtu) {
  size_t room = mtu > 3u + SC_HEADER_BYTES ? (size_t)mtu - 3u - SC_HEADER_BYTES : 0u;
  size_t n = room / SC_SAMPLE_BYTES;
  if (n < 1u) n = 1u;
  if (n > SC_MAX_SAMPLES) n = SC_MAX_SAMPLES;
  return (uint8_t)n;
}

static inline void sc_packet_init(sc_packet *p, uint8_t samples_per_packet) {
  if (samples_per_packet < 1u) samples_per_packet = 1u;
  if (samples_per_packet > SC_MAX_SAMPLES) samples_per_packet = SC_MAX_SAMPLES;
  p->samples = 0;
  p->samples_per_packet = samples_per_packet;
  p->sequence = 0;
}

/*
 * Adds one reading taken at t_us (a 32-bit microsecond clock that may wrap).
 * Returns the packet's length when it is full and ready to be sent from p->bytes, else 0.
 * Send it, or drop it, before the next call: the sequence counts it either way, so that losses show.
 */
static inline size_t sc_packet_add(sc_packet *p, const sc_sample *s, uint32_t t_us) {
  uint8_t *at;
  size_t i;
  if (p->samples == 0) {
    p->bytes[0] = (uint8_t)SC_VERSION;
    p->bytes[1] = p->samples_per_packet;
    sc_put_u16(p->bytes + 2, p->sequence);
    sc_put_u32(p->bytes + 4, t_us);
  }
  at = p->bytes + SC_PACKET_BYTES(p->samples);
  for (i = 0; i < 3; i++) {
    sc_put_u16(at + 2 * i, (uint16_t)s->acc[i]);
    sc_put_u16(at + 6 + 2 * i, (uint16_t)s->gyro[i]);
  }
  p->samples++;
  if (p->samples < p->samples_per_packet) return 0;
  p->samples = 0;
  p->sequence++;
  return SC_PACKET_BYTES(p->samples_per_packet);
}

/* Even sample times for a board that notices new readings by polling, a little late and never early. */
typedef struct {
  uint32_t t_us;
  /* Period between readings, 1/256 us, as learnt. */
  uint32_t period_q8;
  uint8_t running;
} sc_even_clock;

static inline void sc_even_clock_init(sc_even_clock *c, uint16_t rate_centi_hz) {
  c->t_us = 0;
  c->period_q8 = (uint32_t)(25600000000ull / (rate_centi_hz > 0 ? rate_centi_hz : 1u));
  c->running = 0;
}

/* Time of a reading that was noticed at seen_us; readings that were missed leave whole periods out. */
static inline uint32_t sc_even_time(sc_even_clock *c, uint32_t seen_us) {
  const int32_t period = (int32_t)(c->period_q8 >> 8);
  int32_t late = (int32_t)(seen_us - (c->t_us + (uint32_t)period));
  if (!c->running || late > 32 * period || late < -period) {
    c->running = 1;
    c->t_us = seen_us;
    return seen_us;
  }
  c->t_us += (uint32_t)period;
  for (; late > period * 3 / 4; late -= period) c->t_us += (uint32_t)period;
  c->t_us += (uint32_t)(late / 16);
  c->period_q8 = (uint32_t)((int32_t)c->period_q8 + late / 4);
  return c->t_us;
}

/*
 * Writes the info characteristic: 12 fixed bytes, then hardware and firmware as text with a zero byte between.
 * The full scales are what 32768 counts stand for, in 0.001 g and 0.001 deg/s.
 * Returns the number of bytes written, at most room; 0 when room is under 12.
 */
static inline size_t sc_info(uint8_t *out, size_t room, uint8_t role, uint16_t rate_centi_hz,
                             uint32_t acc_full_scale_mg, uint32_t gyro_full_scale_mdps,
                             const char *hardware, const char *firmware) {
  size_t h = strlen(hardware);
  size_t f = strlen(firmware);
  if (room < SC_INFO_BYTES) return 0;
  out[0] = (uint8_t)SC_VERSION;
  out[1] = role;
  sc_put_u16(out + 2, rate_centi_hz);
  sc_put_u32(out + 4, acc_full_scale_mg);
  sc_put_u32(out + 8, gyro_full_scale_mdps);
  if (SC_INFO_BYTES + h + 1 + f > room) return SC_INFO_BYTES;
  memcpy(out + SC_INFO_BYTES, hardware, h);
  out[SC_INFO_BYTES + h] = 0;
  memcpy(out + SC_INFO_BYTES + h + 1, firmware, f);
  return SC_INFO_BYTES + h + 1 + f;
}

#endif
