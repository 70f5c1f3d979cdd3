/*
 * Runs the sketch on a board made of stand-ins: an IMU with registers on I2C that takes a reading every 1/104 s, a clock
 * that goes on with each bus transfer, and a radio of which every write and notification is printed. Argument: where the
 * clock starts, us; or `no-imu`. What it prints is read by sketch.test.ts.
 */
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <map>
#include <string>
#include <vector>

#include "Arduino.h"
#include "ArduinoBLE.h"
#include "Wire.h"

// ---- time and pins ---------------------------------------------------------------------------------------------
static uint64_t startUs = 0;
static uint64_t elapsedUs = 0;
static PinStatus led = LOW;
static int flashes = 0;
struct Failed {};

unsigned long micros() { return static_cast<uint32_t>(startUs + elapsedUs); }
unsigned long millis() { return static_cast<uint32_t>(elapsedUs / 1000); }
void delay(unsigned long ms) {
  elapsedUs += ms * 1000;
  if (elapsedUs > 10000000 && ms > 1000) throw Failed();
}
void pinMode(pin_size_t, PinMode) {}
void digitalWrite(pin_size_t pin, PinStatus value) {
  if (pin != LED_BUILTIN) return;
  if (value == HIGH && led == LOW) flashes++;
  led = value;
}
PinStatus digitalRead(pin_size_t) { return led; }
int analogRead(pin_size_t) { return 800; }

// ---- IMU: reading k is gyro k, -k, 32767 and accelerometer 2 k, -2 k, -32768 --------------------------------------
static bool hasImu = true;
static uint8_t registers[128];
static int taken = -1;

static int due() { return static_cast<int>(static_cast<double>(elapsedUs) * 104 / 1e6); }
static int16_t valueOf(int k, int i) {
  const int values[6] = {k, -k, 32767, 2 * k, -2 * k, -32768};
  return static_cast<int16_t>(values[i]);
}
static uint8_t readRegister(int reg) {
  if (reg == 0x0F) return 0x6A;
  const bool on = registers[0x10] != 0 && registers[0x11] != 0;
  if (reg == 0x1E) return on && due() > taken ? 0x03 : 0x00;
  if (reg < 0x22 || reg > 0x2D) return registers[reg];
  if (reg == 0x22) taken = due();
  const uint16_t v = static_cast<uint16_t>(valueOf(taken, (reg - 0x22) / 2));
  return static_cast<uint8_t>((reg & 1) == 0 ? v & 0xff : v >> 8);
}

static std::vector<uint8_t> sending;
static int at = 0, left = 0;
static bool answers = false;
TwoWire Wire, Wire1;
void TwoWire::begin() {}
void TwoWire::setClock(uint32_t) {}
void TwoWire::beginTransmission(uint8_t address) {
  answers = hasImu && address == 0x6A;
  sending.clear();
}
size_t TwoWire::write(uint8_t value) {
  sending.push_back(value);
  return 1;
}
uint8_t TwoWire::endTransmission(bool) {
  elapsedUs += 100;
  if (!answers) return 2;
  if (!sending.empty()) at = sending[0];
  for (size_t i = 1; i < sending.size(); i++) registers[at++] = sending[i];
  return 0;
}
size_t TwoWire::requestFrom(uint8_t, size_t n, bool) {
  elapsedUs += 30 * n;
  left = answers ? static_cast<int>(n) : 0;
  return answers ? n : 0;
}
int TwoWire::available() { return left; }
int TwoWire::read() { return left-- > 0 ? readRegister(at++) : -1; }

// ---- radio -------------------------------------------------------------------------------------------------------
struct Characteristic {
  std::vector<uint8_t> value;
  size_t size = 0;
  bool fixed = false;
  bool subscribed = false;
  std::map<int, BLECharacteristicEventHandler> handlers;
};
static std::map<std::string, Characteristic> &all() {
  static std::map<std::string, Characteristic> characteristics;
  return characteristics;
}
static BLEDeviceEventHandler onDevice[3];

static void print(const std::string &what, const std::vector<uint8_t> &bytes) {
  std::printf("%s ", what.c_str());
  for (uint8_t b : bytes) std::printf("%02x", b);
  std::printf("\n");
}

BLECharacteristic::BLECharacteristic(const char *uuid, uint16_t, int size, bool fixedLength) : uuid_(uuid) {
  all()[uuid].size = static_cast<size_t>(size);
  all()[uuid].fixed = fixedLength;
}
int BLECharacteristic::readValue(uint8_t value[], int length) {
  const std::vector<uint8_t> &v = all()[uuid_].value;
  const size_t n = v.size() < static_cast<size_t>(length) ? v.size() : static_cast<size_t>(length);
  std::memcpy(value, v.data(), n);
  return static_cast<int>(n);
}
int BLECharacteristic::writeValue(const uint8_t value[], int length, bool) {
  Characteristic &c = all()[uuid_];
  c.value.assign(value, value + length);
  if (c.fixed) c.value.resize(c.size);
  if (c.subscribed) print("notify", c.value);
  return 1;
}
bool BLECharacteristic::subscribed() { return all()[uuid_].subscribed; }
void BLECharacteristic::setEventHandler(int event, BLECharacteristicEventHandler handler) {
  all()[uuid_].handlers[event] = handler;
}
BLEUnsignedCharCharacteristic::BLEUnsignedCharCharacteristic(const char *uuid, uint16_t properties)
    : BLECharacteristic(uuid, properties, 1) {}
int BLEUnsignedCharCharacteristic::writeValue(unsigned char value) { return writeValue(&value, 1); }

BLEService::BLEService(const char *uuid) : uuid_(uuid) {}
void BLEService::addCharacteristic(BLECharacteristic &c) { std::printf("offers %s\n", c.uuid_); }

static BLELocalDevice device;
BLELocalDevice &BLE = device;
int BLELocalDevice::begin() { return 1; }
void BLELocalDevice::poll() { elapsedUs += 50; }
int BLELocalDevice::advertise() {
  std::printf("advertises\n");
  return 1;
}
bool BLELocalDevice::setLocalName(const char *name) { return std::printf("name %s\n", name) > 0; }
void BLELocalDevice::setDeviceName(const char *) {}
void BLELocalDevice::setConnectionInterval(uint16_t low, uint16_t high) { std::printf("interval %d %d\n", low, high); }
bool BLELocalDevice::setAdvertisedService(const BLEService &s) { return std::printf("service %s\n", s.uuid_) > 0; }
void BLELocalDevice::addService(BLEService &) {}
void BLELocalDevice::setEventHandler(BLEDeviceEvent event, BLEDeviceEventHandler handler) { onDevice[event] = handler; }

// ---- the sketch, and what a central does with it ------------------------------------------------------------------
#include "stillcatch_sensor.ino"

static void runFor(double seconds) {
  const uint64_t until = elapsedUs + static_cast<uint64_t>(seconds * 1e6);
  while (elapsedUs < until) loop();
}
static void centralReads(const char *what, const char *uuid) {
  Characteristic &c = all()[uuid];
  if (c.handlers.count(BLERead)) c.handlers[BLERead](BLEDevice(), BLECharacteristic(uuid, 0, c.size, c.fixed));
  print(what, c.value);
}
static void centralWrites(const std::vector<uint8_t> &command) {
  Characteristic &c = all()[SC_CONTROL_UUID];
  c.value = command;
  c.handlers[BLEWritten](BLEDevice(), BLECharacteristic(SC_CONTROL_UUID, 0, c.size));
}

int main(int, char **argv) {
  hasImu = std::strcmp(argv[1], "no-imu") != 0;
  startUs = std::strtoull(argv[1], nullptr, 10);
  try {
    setup();
  } catch (Failed) {
    std::printf("flashes %d in %lu ms\n", flashes, millis());
    return 0;
  }
  std::printf("registers %02x %02x %02x\n", registers[0x10], registers[0x11], registers[0x12]);
  runFor(0.5);
  onDevice[BLEConnected](BLEDevice());
  centralReads("info", SC_INFO_UUID);
  all()[SC_DATA_UUID].subscribed = true;
  centralWrites({1, 1});
  runFor(3);
  const unsigned long asked = micros();
  centralReads("clock", SC_CLOCK_UUID);
  std::printf("asked %lu\n", asked);
  centralWrites({1, 0});
  std::printf("stopped\n");
  runFor(1);
  centralWrites({1, 1});
  std::printf("started\n");
  runFor(1);
  const int before = flashes;
  centralWrites({3, 6});
  runFor(3);
  std::printf("blinked %d, led %d\n", flashes - before, led);
}
