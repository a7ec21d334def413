"""Job files for the end-to-end tests, made from a few words."""
NS = 'xmlns="urn:rowcut:job:1"'

# A price book that is complete by itself, so that no store is read; prices are a scenario of our own.
PRICES = """<prices tax-percent="8.25" deposit-percent="40">
  <shop name="Harbour Carpets"><address>1 Quay Street</address></shop>
  <catalogue>
    <cushion id="pad" name="Felt cushion" supplier="Northgate Supply" unit="sq yd" roll-width="6 ft" pack="30" pack-unit="roll"/>
    <tape id="tape" name="Seam tape" supplier="Northgate Supply" unit="ft" tape-width="3 in" pack="66" pack-unit="roll"/>
    <sealer id="sealer" name="Seam sealer" supplier="Northgate Supply" unit="each" covers-length="60 ft"/>
    <strip id="strip" name="Tack strip" supplier="Northgate Supply" unit="ft" pack="400" pack-unit="carton"/>
    <adhesive id="glue" name="Adhesive" supplier="Northgate Supply" unit="gal" pack="4" pack-unit="tub" covers-area="36 sq yd"/>
  </catalogue>
  <price item="twist" cost="20.00" sale="35.50"/>
  <price item="pad" cost="3.10" sale="5.25"/>
  <price item="tape" cost="0.12" sale="0.30"/>
  <price item="sealer" cost="6.00" sale="9.50"/>
  <price item="strip" cost="0.18" sale="0.40"/>
  <price item="glue" cost="14.00" sale="22.00"/>
  <price item="lay" unit="sq yd" cost="4.00" sale="6.50"/>
  <price item="side-seam" unit="ft" cost="0.50" sale="1.00"/>
  <price item="cross-seam" unit="each" cost="4.00" sale="8.00"/>
  <price item="stair" unit="each" cost="6.00" sale="11.00"/>
  <price item="fixed" unit="each" cost="40.00" sale="75.00"/>
</prices>"""

GOODS = ('<goods><carpet id="twist" name="Harbour Twist" supplier="Quay Mills" unit="sq yd" roll-width="12 ft"/></goods>')


def room(name, width, length, more=""):
    """A rectangular room walked east, north, west, south."""
    walls = "".join(f'<wall bearing="{bearing}" length="{size}"/>'
                    for bearing, size in (("E", width), ("N", length), ("W", width), ("S", length)))
    return f'<room name="{name}">{walls}{more}</room>'


def job(*measures, settings='trim="0"', goods=GOODS, prices=PRICES, attributes=""):
    """`measures` are the insides of <measure> elements: M1, M2 and so on."""
    inside = "".join(f'<measure id="M{i + 1}">{rooms}</measure>' for i, rooms in enumerate(measures))
    return (f'<job {NS} id="J-1" number="2026-001" title="Gull Cottage" date="2026-03-02" {attributes}>'
            f'<customer name="A. Customer"/><settings {settings}/>{goods}{inside}{prices}</job>')
