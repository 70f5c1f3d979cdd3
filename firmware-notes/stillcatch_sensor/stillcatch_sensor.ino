/*
 * A Stillcatch sensor on an nRF52840 board with an LSM6DS3-class IMU (accelerometer and gyroscope on I2C), a
 * lithium cell and a status LED. Needs the Arduino core for the board and the ArduinoBLE library; the IMU is
 * driven by its registers, so no sensor library is needed and no hidden default range (often +-4 g) applies.
 *
 * Bench-check it with the list in ../README.md before you strap it on. Not yet run on hardware by its authors: tests
 * run it on a board of stand-ins, and the board part below is written from the parts' data sheets.
 * SPDX-License-Identifier: Apache-2.0
 */
#include <ArduinoBLE.h>
#include <Wire.h>

#include "stillcatch_packet.h"

// ---- What to change for your board and use ---------------------------------------------------------------------
static const uint8_t ROLE = SC_ROLE_ANY;  // SC_ROLE_CHEST, SC_ROLE_TRAIL_ARM, SC_ROLE_CLUB: the page assigns it anyway
static const char NAME[] = "Stillcatch sensor";
static const char HARDWARE[] = "nRF52840+LSM6DS3";
static const char FIRMWARE[] = "1.0";
static TwoWire &IMU_BUS = Wire1;          // boards with the IMU on their main I2C bus: Wire
static const uint8_t IMU_ADDRESS = 0x6A;  // 0x6B on some boards
static const int IMU_POWER_PIN = -1;      // boards that switch the IMU's supply by a pin: that pin
static const int LED_PIN = LED_BUILTIN;
static const int BATTERY_PIN = -1;        // analog pin behind the board's divider; -1: no battery reading
static const float BATTERY_DIVIDER = 2.0f;  // battery volts / pin volts
static const float ADC_REFERENCE_V = 3.3f;

// ---- IMU registers (LSM6DS3 data sheet; the DS3TR-C and DSL share them) -----------------------------------------
static const uint8_t REG_WHO_AM_I = 0x0F;
static const uint8_t REG_CTRL1_XL = 0x10;
static const uint8_t REG_CTRL2_G = 0x11;
static const uint8_t REG_CTRL3_C = 0x12;
static const uint8_t REG_STATUS = 0x1E;
static const uint8_t REG_OUTX_L_G = 0x22;
static const uint8_t CTRL1_XL_104HZ_16G = 0x44;
static const uint8_t CTRL2_G_104HZ_2000DPS = 0x4C;
static const uint8_t CTRL3_BLOCK_UPDATE_AND_INCREMENT = 0x44;
static const uint8_t STATUS_BOTH_READY = 0x03;

// 0.488 mg and 70 mdps a count (data sheet) make these full scales at 32768 counts.
static const uint16_t RATE_CENTI_HZ = 10400;
static const uint32_t ACC_FULL_SCALE_MG = 15991;
static const uint32_t GYRO_FULL_SCALE_MDPS = 2293760;

// 7.5 to 15 ms in units of 1.25 ms: the central has the last word, 104 Hz suits them all.
static const uint16_t MIN_INTERVAL = 6;
static const uint16_t MAX_INTERVAL = 12;
// Packets of 6 readings leave 17 times a second: kind to the battery, 58 ms late. 1 is the least delay, 20 bytes.
static const uint8_t SAMPLES_PER_PACKET = 1;

static BLEService service(SC_SERVICE_UUID);
static BLECharacteristic dataCharacteristic(SC_DATA_UUID, BLENotify, SC_PACKET_BYTES(SC_MAX_SAMPLES));
static BLECharacteristic infoCharacteristic(SC_INFO_UUID, BLERead, 64);
static BLECharacteristic controlCharacteristic(SC_CONTROL_UUID, BLEWrite, 4);
static BLECharacteristic clockCharacteristic(SC_CLOCK_UUID, BLERead, SC_CLOCK_BYTES, true);
static BLEService batteryService("180F");
static BLEUnsignedCharCharacteristic batteryLevel("2A19", BLERead | BLENotify);

static sc_packet packet;
static sc_even_clock sampleClock;
static bool running = true;
static uint8_t blinksLeft = 0;
static uint32_t nextBlinkMs = 0;
static uint32_t nextBatteryMs = 0;

static void writeRegister(uint8_t reg, uint8_t value) {
  IMU_BUS.beginTransmission(IMU_ADDRESS);
  IMU_BUS.write(reg);
  IMU_BUS.write(value);
  IMU_BUS.endTransmission();
}

static bool readRegisters(uint8_t reg, uint8_t *out, size_t n) {
  IMU_BUS.beginTransmission(IMU_ADDRESS);
  IMU_BUS.write(reg);
  if (IMU_BUS.endTransmission(false) != 0) return false;
  if (IMU_BUS.requestFrom(IMU_ADDRESS, static_cast<uint8_t>(n)) != n) return false;
  for (size_t i = 0; i < n; i++) out[i] = static_cast<uint8_t>(IMU_BUS.read());
  return true;
}

// Known answers: 0x69 (DS3), 0x6A (DS3TR-C, DSL, DSM), 0x6C (DSO, DSOX).
static bool imuAnswers() {
  uint8_t who = 0;
  return readRegisters(REG_WHO_AM_I, &who, 1) && (who == 0x69 || who == 0x6A || who == 0x6C);
}

static bool startImu() {
  if (IMU_POWER_PIN >= 0) {
    pinMode(IMU_POWER_PIN, OUTPUT);
    digitalWrite(IMU_POWER_PIN, HIGH);
    delay(20);
  }
  IMU_BUS.begin();
  IMU_BUS.setClock(400000);
  if (!imuAnswers()) return false;
  writeRegister(REG_CTRL3_C, CTRL3_BLOCK_UPDATE_AND_INCREMENT);
  writeRegister(REG_CTRL1_XL, CTRL1_XL_104HZ_16G);
  writeRegister(REG_CTRL2_G, CTRL2_G_104HZ_2000DPS);
  return true;
}

// An LED that says what is wrong, since there is no screen: n flashes, a pause, again.
static void failForEver(int flashes) {
  pinMode(LED_PIN, OUTPUT);
  for (;;) {
    for (int i = 0; i < flashes; i++) {
      digitalWrite(LED_PIN, HIGH);
      delay(150);
      digitalWrite(LED_PIN, LOW);
      delay(250);
    }
    delay(1500);
  }
}

static void setInfo() {
  uint8_t info[64];
  const size_t n = sc_info(info, sizeof info, ROLE, RATE_CENTI_HZ, ACC_FULL_SCALE_MG,
                           GYRO_FULL_SCALE_MDPS, HARDWARE, FIRMWARE);
  infoCharacteristic.writeValue(info, n);
}

static void onControl(BLEDevice, BLECharacteristic characteristic) {
  uint8_t command[4] = {0, 0, 0, 0};
  characteristic.readValue(command, sizeof command);
  if (command[0] == SC_CONTROL_RUN) running = command[1] == 1;
  if (command[0] == SC_CONTROL_BLINK) blinksLeft = command[1] > 20 ? 20 : command[1];
  // SC_CONTROL_RATE: this sketch knows 104 Hz only; the info characteristic says so.
}

/* The library calls this before it sends the value: the clock as it stands when the question is answered. */
static void setClock() {
  uint8_t now[SC_CLOCK_BYTES];
  sc_put_u32(now, micros());
  clockCharacteristic.writeValue(now, sizeof now);
}

static void onClockRead(BLEDevice, BLECharacteristic) { setClock(); }

static void onConnected(BLEDevice) {
  running = true;
  packet.samples = 0;
}

static uint8_t batteryPercent() {
  const float volts = analogRead(BATTERY_PIN) / 1023.0f * ADC_REFERENCE_V * BATTERY_DIVIDER;
  // A lithium cell at rest: about 3.3 V empty, 4.2 V full (rule of thumb; under load it reads lower).
  const float share = (volts - 3.3f) / (4.2f - 3.3f);
  return static_cast<uint8_t>(100.0f * constrain(share, 0.0f, 1.0f));
}

static void tendBattery(uint32_t nowMs) {
  if (BATTERY_PIN < 0 || static_cast<int32_t>(nowMs - nextBatteryMs) < 0) return;
  nextBatteryMs = nowMs + 60000;
  batteryLevel.writeValue(batteryPercent());
}

static void tendLed(uint32_t nowMs) {
  if (blinksLeft == 0 || static_cast<int32_t>(nowMs - nextBlinkMs) < 0) return;
  const bool on = digitalRead(LED_PIN) == LOW;
  digitalWrite(LED_PIN, on ? HIGH : LOW);
  if (!on) blinksLeft--;
  nextBlinkMs = nowMs + 150;
}

static int16_t i16(const uint8_t *at) { return static_cast<int16_t>(at[0] | (at[1] << 8)); }

/* One reading, if there is a new one. Radio work delays the look by a millisecond or two; the clock evens that out. */
static void tendImu() {
  uint8_t status = 0;
  if (!readRegisters(REG_STATUS, &status, 1) || (status & STATUS_BOTH_READY) != STATUS_BOTH_READY) return;
  const uint32_t tUs = sc_even_time(&sampleClock, micros());
  uint8_t raw[12];  // gyro x y z, then accelerometer x y z
  if (!readRegisters(REG_OUTX_L_G, raw, sizeof raw)) return;
  sc_sample sample;
  for (int a = 0; a < 3; a++) {
    sample.gyro[a] = i16(raw + 2 * a);
    sample.acc[a] = i16(raw + 6 + 2 * a);
  }
  const size_t length = sc_packet_add(&packet, &sample, tUs);
  if (length > 0 && running && dataCharacteristic.subscribed())
    dataCharacteristic.writeValue(packet.bytes, length);
}

void setup() {
  pinMode(LED_PIN, OUTPUT);
  if (!startImu()) failForEver(2);
  if (!BLE.begin()) failForEver(3);
  sc_packet_init(&packet, SAMPLES_PER_PACKET);
  sc_even_clock_init(&sampleClock, RATE_CENTI_HZ);
  BLE.setLocalName(NAME);
  BLE.setDeviceName(NAME);
  BLE.setConnectionInterval(MIN_INTERVAL, MAX_INTERVAL);
  BLE.setAdvertisedService(service);
  service.addCharacteristic(dataCharacteristic);
  service.addCharacteristic(infoCharacteristic);
  service.addCharacteristic(controlCharacteristic);
  service.addCharacteristic(clockCharacteristic);
  BLE.addService(service);
  if (BATTERY_PIN >= 0) {
    batteryService.addCharacteristic(batteryLevel);
    BLE.addService(batteryService);
  }
  setInfo();
  setClock();
  clockCharacteristic.setEventHandler(BLERead, onClockRead);
  controlCharacteristic.setEventHandler(BLEWritten, onControl);
  BLE.setEventHandler(BLEConnected, onConnected);
  BLE.advertise();
}

void loop() {
  const uint32_t nowMs = millis();
  BLE.poll();
  tendImu();
  tendBattery(nowMs);
  tendLed(nowMs);
}
