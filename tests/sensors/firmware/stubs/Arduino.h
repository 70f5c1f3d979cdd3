/*
 * Stand-ins for what the sketch uses of a board's core and libraries: names and types follow the public Arduino core
 * API and ArduinoBLE; what stands behind them is the board of ../board.cpp. A real core may still differ.
 */
#pragma once
#include <stddef.h>
#include <stdint.h>

typedef uint8_t pin_size_t;
typedef enum { LOW = 0, HIGH = 1 } PinStatus;
typedef enum { INPUT = 0, OUTPUT = 1 } PinMode;
#define LED_BUILTIN 13
#define constrain(x, low, high) ((x) < (low) ? (low) : ((x) > (high) ? (high) : (x)))

void pinMode(pin_size_t pin, PinMode mode);
void digitalWrite(pin_size_t pin, PinStatus value);
PinStatus digitalRead(pin_size_t pin);
int analogRead(pin_size_t pin);
void delay(unsigned long ms);
unsigned long millis();
unsigned long micros();
