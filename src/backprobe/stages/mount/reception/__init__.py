"""What a receiver's log says of the place where its antenna sits."""
