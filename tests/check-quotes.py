#!/usr/bin/env python3
"""Recomputes quotations with Python's decimal and fraction arithmetic.

Reads the file a test wrote, one record a line, and prices it again from the definitions of the units; shares nothing
with the program. Prints the first difference and exits with 1.

  book   DIGITS TAX_PPM DEPOSIT_PPM
  line   QUANTITY UNIT PRICE_UNIT ROLL_WIDTH_MM PACK PACK_UNIT UNIT_OF_GOODS SALE COST -> QUANTITY AMOUNT COST
  total  NET TAX TOTAL DEPOSIT COST MARGIN
"""
import sys
from decimal import ROUND_HALF_UP, Decimal, getcontext
from fractions import Fraction

getcontext().prec = 100

INCH = Fraction(254, 10000)
FOOT, YARD = 12 * INCH, 36 * INCH
SIZES = {
    "m": ("length", Fraction(1)), "ft": ("length", FOOT), "yd": ("length", YARD),
    "m2": ("area", Fraction(1)), "sq ft": ("area", FOOT ** 2), "sq yd": ("area", YARD ** 2),
    "L": ("volume", Fraction(1)), "gal": ("volume", Fraction("3.785411784")),
}


def to_decimal(value):
    """A fraction as a decimal, exact to far more digits than a half could hide in."""
    return Decimal(value.numerator) / Decimal(value.denominator)


def round_to(value, digits):
    return to_decimal(value).quantize(Decimal(1).scaleb(-digits), rounding=ROUND_HALF_UP)


def measure(quantity, unit, wanted, width):
    """A quantity of one unit in another, as an exact fraction."""
    if unit == wanted:
        return quantity
    (kind, size), (wanted_kind, wanted_size) = SIZES[unit], SIZES[wanted]
    amount = quantity * size
    if (kind, wanted_kind) == ("length", "area"):
        amount *= width
    elif (kind, wanted_kind) == ("area", "length"):
        amount /= width
    else:
        assert kind == wanted_kind, (unit, wanted)
    return amount / wanted_size


def convert(quantity, unit, wanted, width, pack, pack_unit, goods_unit):
    if wanted == unit:
        return quantity
    if pack and wanted == pack_unit != goods_unit:
        return measure(quantity, unit, goods_unit, width) / pack
    return measure(quantity, unit, wanted, width)


class Checker:
    def __init__(self):
        self.number = self.lines = self.quotes = 0

    def check(self, what, got, wanted):
        if Decimal(got) != wanted:
            sys.exit(f"record {self.number}: {what} is {got}, should be {wanted}")

    def book(self, digits, tax_ppm, deposit_ppm):
        self.digits, self.tax, self.deposit = int(digits), Fraction(int(tax_ppm), 10**6), Fraction(int(deposit_ppm), 10**6)
        self.net = self.cost = Decimal(0)

    def line(self, quantity, unit, wanted, width_mm, pack, pack_unit, goods_unit, sale, cost, got, amount, got_cost):
        exact = convert(Fraction(quantity), unit, wanted, Fraction(width_mm) / 1000, Fraction(pack), pack_unit, goods_unit)
        priced = round_to(exact, 6)
        self.check("quantity", got, priced)
        wanted_amount = round_to(Fraction(sale) * Fraction(priced), self.digits)
        wanted_cost = round_to(Fraction(cost) * Fraction(priced), self.digits)
        self.check("amount", amount, wanted_amount)
        self.check("cost", got_cost, wanted_cost)
        self.net += wanted_amount
        self.cost += wanted_cost
        self.lines += 1

    def total(self, net, tax, total, deposit, cost, margin):
        self.check("net", net, self.net)
        wanted_tax = round_to(Fraction(self.net) * self.tax, self.digits)
        self.check("tax", tax, wanted_tax)
        self.check("total", total, self.net + wanted_tax)
        self.check("deposit", deposit, round_to(Fraction(self.net + wanted_tax) * self.deposit, self.digits))
        self.check("cost", cost, self.cost)
        self.check("margin", margin, self.net - self.cost)
        self.quotes += 1


def main():
    checker = Checker()
    with open(sys.argv[1], encoding="utf-8") as records:
        for record in records:
            checker.number += 1
            kind, *fields = record.rstrip("\n").split("\t")
            getattr(checker, kind)(*fields)
    print(checker.quotes, checker.lines)


main()
