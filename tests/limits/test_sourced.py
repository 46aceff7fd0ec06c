"""What the rows of the electrical tables are made of."""

from backprobe.findings import Limit, Standing
from backprobe.limits import batteries, crimps, fuses, joints, wires
from backprobe.limits.sourced import Basis, Gate


def test_a_basis_is_shown_with_its_standing():
    """What is remembered says so."""
    assert Basis("ISO 6722-1", Standing.FROM_MEMORY).warrant == "ISO 6722-1 (from memory, unverified)"


def test_only_what_is_from_memory_is_unverified():
    """Published, common practice and our own model may decide; memory may not."""
    gates = [Gate("C", 3, 30, 135, 0.75, 600, Basis("", standing)) for standing in Standing]
    assert [gate.basis.standing for gate in gates if not gate.verified] == [Standing.FROM_MEMORY]


def test_every_table_has_a_basis():
    """Each constant of a basis names what it rests on."""
    found = [(n, v) for module in (wires, fuses, crimps, batteries) for n, v in vars(module).items() if "_BASIS" in n]
    assert len(found) > 15
    assert all(isinstance(basis, Basis) and len(basis.text) > 10 for _, basis in found)


def test_limits_of_joints_are_limits():
    """Each bears its own name, a unit and a basis."""
    assert len(joints.JOINTS) > 8
    for name, limit in joints.JOINTS.items():
        assert isinstance(limit, Limit)
        assert (limit.id, bool(limit.unit), bool(limit.basis)) == (name, True, True)
